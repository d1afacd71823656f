/** How pressing an alert is, by how long before its time it was given. The tones follow the same steps. */
import type { Urgency } from './urgency.ts'

const SOON_MS = 120_000

/** Undefined for a call: somebody waits for an answer. */
export function thresholdUrgency(thresholdMs: number | undefined): Urgency {
  if (thresholdMs === undefined || thresholdMs === 0) return 'now'
  return thresholdMs <= SOON_MS ? 'soon' : 'calm'
}
