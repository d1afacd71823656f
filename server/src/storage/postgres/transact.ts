/**
 * Everything that waited, in few transactions. Neighbouring appends are one: their meetings are locked in the
 * order of their ids, so two processes never wait for each other. Every other command is one of its own and
 * locks what it changes; what only says who is there comes last, in one, in an order all processes share.
 */
import type { Kysely } from 'kysely'
import { groups, perform, type Command, type CommandName } from '../commands/index.ts'
import type { Tables } from '../tables.ts'
import { hasMetAnother, isOutOfReach, words } from './out-of-reach.ts'

export type Result =
  { readonly answer: unknown } | { readonly notSaved: string } | { readonly fault: string }

/** Tells them in any order, as long as each process tells them in the same. */
const LAST: ReadonlySet<CommandName> = new Set(['deviceSeen', 'keepScreens'])
const TRIES = 5

interface Placed {
  readonly place: number
  readonly command: Command
}

/** One result for each command, in order. Never throws. */
export async function transact(
  db: Kysely<Tables>,
  commands: readonly Command[],
): Promise<readonly Result[]> {
  const results: Result[] = []
  for (const part of partsOf(commands)) {
    const done = await inOne(
      db,
      part.map(({ command }) => command),
    )
    for (const [index, { place }] of part.entries()) {
      const result = done[index]
      if (result) results[place] = result
    }
  }
  return results
}

function partsOf(commands: readonly Command[]): readonly (readonly Placed[])[] {
  const placed = commands.map((command, place) => ({ place, command }))
  const last = placed.filter(({ command }) => LAST.has(command.name)).sort(byKey)
  const first = placed.filter(({ command }) => !LAST.has(command.name))
  let next = 0
  const parts = groups(first.map(({ command }) => command)).map((group) =>
    first.slice(next, (next += group.length)),
  )
  return last.length === 0 ? parts : [...parts, last]
}

function byKey(a: Placed, b: Placed): number {
  const [first, second] = [keyOf(a), keyOf(b)]
  return first < second ? -1 : first > second ? 1 : a.place - b.place
}

function keyOf({ command: { name, input } }: Placed): string {
  const { device = '', meeting = '' } = input as { device?: string; meeting?: string }
  return `${name} ${device} ${meeting}`
}

/** One that fails is undone alone and answered with its fault; a database out of reach undoes them all. */
async function inOne(db: Kysely<Tables>, commands: readonly Command[]): Promise<readonly Result[]> {
  try {
    const answers = await again(() => db.transaction().execute((trx) => perform(trx, commands)))
    return answers.map((answer) => ({ answer }))
  } catch (error) {
    if (isOutOfReach(error)) return commands.map(() => ({ notSaved: words(error) }))
    if (commands.length === 1) return [{ fault: words(error) }]
  }
  const results: Result[] = []
  for (const command of commands) results.push(...(await inOne(db, [command])))
  return results
}

async function again<T>(attempt: () => Promise<T>): Promise<T> {
  for (let left = TRIES - 1; ; left -= 1) {
    try {
      return await attempt()
    } catch (error) {
      if (left === 0 || !hasMetAnother(error)) throw error
    }
  }
}
