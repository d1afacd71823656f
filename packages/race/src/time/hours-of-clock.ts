/** Hours of the venue's clock laid onto meeting time. */
import type { Stretch } from '../checks/stretches.ts'

const DAY_MS = 86_400_000

export interface Hours {
  /** Meeting time of some midnight at the venue. */
  readonly midnightAt: number
  /** Since midnight; up to the same hour of the next day where they are equal. */
  readonly fromMs: number
  readonly toMs: number
}

/**
 * Every day's stretch from one hour to the other, over midnight where the second is not after the first, as far as
 * it lies in `within`. Days of 24 h are counted from the midnight given: a change of the clocks in between is not
 * followed.
 */
export function hoursOfClock(hours: Hours, within: Stretch): readonly Stretch[] {
  const { midnightAt, fromMs, toMs } = hours
  const lengthMs = toMs > fromMs ? toMs - fromMs : toMs - fromMs + DAY_MS
  const stretches: Stretch[] = []
  if (!(within.toAt > within.fromAt) || within.toAt - within.fromAt > 40 * DAY_MS) return stretches
  const first = Math.floor((within.fromAt - midnightAt - fromMs) / DAY_MS) - 1
  for (let at = midnightAt + fromMs + first * DAY_MS; at < within.toAt; at += DAY_MS) {
    const fromAt = Math.max(at, within.fromAt)
    const toAt = Math.min(at + lengthMs, within.toAt)
    if (toAt > fromAt) stretches.push({ fromAt, toAt })
  }
  return stretches
}
