/** The moments at which devices speak up before anything falls due, as the captain chooses them. */
import { ALERT_THRESHOLDS_MS, type Plan } from '@pitlamp/race'

const MINUTE_MS = 60_000

/** Longest first, as the devices come to them. */
export const ALERT_MOMENTS = [
  { ms: 10 * MINUTE_MS, word: '10 min' },
  { ms: 5 * MINUTE_MS, word: '5 min' },
  { ms: 2 * MINUTE_MS, word: '2 min' },
  { ms: MINUTE_MS, word: '1 min' },
  { ms: 0, word: 'now' },
] as const

const USUAL = ALERT_THRESHOLDS_MS.stintEnd

export function momentsOf(captain: Plan['captain']): readonly number[] {
  return captain.alertsMs ?? USUAL
}

/** One moment put in or taken out; undefined where it comes to what is usual anyway. */
export function toggledMoments(moments: readonly number[], ms: number): number[] | undefined {
  const next = moments.includes(ms) ? moments.filter((one) => one !== ms) : [...moments, ms]
  next.sort((a, b) => b - a)
  const isUsual = next.length === USUAL.length && next.every((one, i) => one === USUAL[i])
  return isUsual ? undefined : next
}
