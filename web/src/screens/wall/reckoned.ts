/** What this screen reckons the hall's clock to show, so that a slip of the thumb is seen before it counts. */
import { about, countdown } from '../../parts/time.ts'

export interface Reckoned {
  readonly elapsedMs?: number
  readonly toGoMs?: number
  readonly lengthMs?: number
}

/** A reading is worth pressing for where it is further off than a person's reaction. */
const AGREES_MS = 2_000
const FAR_MS = 60_000

/** How far a reading is from our own reckoning, in words; undefined where we reckon nothing. */
export function awayWords(
  reckoned: Reckoned,
  shows: 'toGo' | 'gone',
  readingMs: number,
): string | undefined {
  const { lengthMs } = reckoned
  if (shows === 'toGo' && lengthMs !== undefined && readingMs > lengthMs) {
    return `The segment lasts ${countdown(lengthMs)}: that is more than there is.`
  }
  const ours = shows === 'toGo' ? reckoned.toGoMs : reckoned.elapsedMs
  if (ours === undefined) return undefined
  const off = Math.abs(readingMs - ours)
  const here = `Here it is ${countdown(ours)}`
  if (off <= AGREES_MS) return `${here}: they agree.`
  return off < FAR_MS
    ? `${here}: ${about(off)} apart.`
    : `${here}: ${about(off)} apart. Is it right?`
}
