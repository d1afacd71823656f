/** Where two versions of a document differ, one line a place, for somebody who has to choose. */
import { NOT_KNOWN_YET } from '@pitlamp/race'
import { writeDuration } from './durations.ts'

export interface Difference {
  readonly where: string
  readonly mine: string
  readonly theirs: string
}

const NOTHING = '–'

export function differences(mine: unknown, theirs: unknown): readonly Difference[] {
  return compare(mine, theirs, [])
}

function compare(mine: unknown, theirs: unknown, path: readonly string[]): Difference[] {
  if (JSON.stringify(mine) === JSON.stringify(theirs)) return []
  if (!isBranch(mine) || !isBranch(theirs)) {
    const key = path.at(-1) ?? ''
    return [{ where: placeWords(path), mine: inWords(mine, key), theirs: inWords(theirs, key) }]
  }
  const ours = parts(mine)
  const others = parts(theirs)
  return [...new Set([...ours.keys(), ...others.keys()])].flatMap((key) =>
    compare(ours.get(key), others.get(key), [...path, key]),
  )
}

function isBranch(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

/** Lines of a list are the same line by their id, wherever they stand. */
function parts(branch: object): ReadonlyMap<string, unknown> {
  if (!Array.isArray(branch)) return new Map(Object.entries(branch))
  return new Map(branch.map((line: unknown, index) => [nameOf(line) ?? String(index + 1), line]))
}

function nameOf(line: unknown): string | undefined {
  if (!isBranch(line)) return undefined
  const { id } = line as { id?: unknown }
  return typeof id === 'string' ? id : undefined
}

/** Keys as people say them: `minimumMs` is the minimum; that a rule has a value goes without saying. */
function placeWords(path: readonly string[]): string {
  return path
    .filter((key) => key !== 'value')
    .map((key) =>
      key.replace(/Ms$/, '').replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
    )
    .join(', ')
}

function inWords(value: unknown, key: string): string {
  if (value === undefined) return NOTHING
  if (value === NOT_KNOWN_YET) return 'not known yet'
  if (typeof value === 'number' && key.endsWith('Ms'))
    return writeDuration(value, value < 120_000 ? 's' : 'h')
  if (!isBranch(value)) return typeof value === 'string' ? value : JSON.stringify(value)
  const { name } = value as { name?: unknown }
  return typeof name === 'string' ? name : JSON.stringify(value).slice(0, 120)
}
