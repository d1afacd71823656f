/** Times as a calendar's reader reads them, in the venue's time zone. */
import { inForce, type State } from '@pitlamp/race'

/** The venue's IANA time zone, UTC while no rules name one that this machine knows. */
export function zoneOf(state: State, now: number): string {
  const timeZone = inForce(state, 'rules', now)?.timeZone ?? 'UTC'
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone })
    return timeZone
  } catch {
    return 'UTC'
  }
}

/** `at` in ms, as "Sun 25 Oct 02:15 GMT+1": the offset, since it may change during a race. */
export function clockTime(at: number, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    ...{ timeZone, weekday: 'short', day: 'numeric', month: 'short' },
    ...{ hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZoneName: 'shortOffset' },
  }).formatToParts(at)
  const named = Object.fromEntries(parts.map(({ type, value }) => [type, value]))
  const { weekday = '', day = '', month = '', hour = '', minute = '', timeZoneName = '' } = named
  return `${weekday} ${day} ${month} ${hour}:${minute} ${timeZoneName}`
}

/** A duration in ms as h:mm:ss, whole seconds begun. */
export function lengthWords(durationMs: number): string {
  const seconds = Math.floor(durationMs / 1_000)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${Math.floor(seconds / 3_600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`
}
