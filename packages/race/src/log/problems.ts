/** How what does not add up is listed. */
import type { Problem } from '../fold/state.ts'

export type Problems = Problem[]

/** "1 entry is", "3 entries are". */
export function entriesAre(count: number): string {
  return `${entryCount(count)} ${count === 1 ? 'is' : 'are'}`
}

export function entryCount(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`
}
