/**
 * One transaction for everything that waited. A command that fails is undone alone and answered with its
 * fault; a disk that takes nothing undoes them all.
 */
import { sql, type Kysely } from 'kysely'
import type { Trx } from '../commands/context.ts'
import { groups, perform, type Command } from '../commands/index.ts'
import { raiseMark } from '../commands/server-time.ts'
import type { Tables } from '../tables.ts'

export type Result =
  { readonly answer: unknown } | { readonly notSaved: string } | { readonly fault: string }

export interface Batch {
  readonly commands: readonly Command[]
  readonly markMs: number
  readonly epoch: number
}

/** One result for each command, in order. Never throws. */
export async function transact(db: Kysely<Tables>, batch: Batch): Promise<readonly Result[]> {
  try {
    return await db.transaction().execute(async (trx) => {
      const results: Result[] = []
      for (const group of groups(batch.commands)) results.push(...(await performGroup(trx, group)))
      await raiseMark(trx, batch)
      return results
    })
  } catch (error) {
    const result = isOfTheDisk(error) ? { notSaved: words(error) } : { fault: words(error) }
    return batch.commands.map(() => result)
  }
}

async function performGroup(trx: Trx, group: readonly Command[]): Promise<readonly Result[]> {
  try {
    await sql`savepoint command`.execute(trx)
    const answers = await perform(trx, group)
    await sql`release savepoint command`.execute(trx)
    return answers.map((answer) => ({ answer }))
  } catch (error) {
    if (isOfTheDisk(error)) throw error
    await sql`rollback to savepoint command`.execute(trx)
    await sql`release savepoint command`.execute(trx)
    if (group.length === 1) return [{ fault: words(error) }]
  }
  const results: Result[] = []
  for (const command of group) results.push(...(await performGroup(trx, [command])))
  return results
}

const DISK = /^SQLITE_(FULL|IOERR|READONLY|CANTOPEN|CORRUPT|NOTADB|PERM|BUSY|LOCKED|AUTH)/

function isOfTheDisk(error: unknown): boolean {
  const { code } = error as { readonly code?: unknown }
  return typeof code === 'string' && DISK.test(code)
}

function words(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
