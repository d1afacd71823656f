/** How what does not add up is listed. */
import { counted, plural } from '../sentences/plural.ts'
import type { Problem } from '../fold/state.ts'

export type Problems = Problem[]

/** "1 entry is", "3 entries are". */
export function entriesAre(count: number): string {
  return `${entryCount(count)} ${plural(count, 'is', 'are')}`
}

export function entryCount(count: number): string {
  return counted(count, 'entry', 'entries')
}
