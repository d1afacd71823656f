/** A line of the log while the fold works on it. */
import type { LogLine } from '../fold/state.ts'

export type Line = { -readonly [K in keyof LogLine]: LogLine[K] }

/** Whether a line states a fact that is to be folded. */
export function holds(line: Line): boolean {
  return line.standing === 'holds' || line.standing === 'corrected'
}
