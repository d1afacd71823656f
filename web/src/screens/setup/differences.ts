/** Where two versions of a document differ, one line a place, for somebody who has to choose. */

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
    return [{ where: path.join(', '), mine: inWords(mine), theirs: inWords(theirs) }]
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

function inWords(value: unknown): string {
  if (value === undefined) return NOTHING
  if (!isBranch(value)) return typeof value === 'string' ? value : JSON.stringify(value)
  const { name } = value as { name?: unknown }
  return typeof name === 'string' ? name : JSON.stringify(value).slice(0, 120)
}
