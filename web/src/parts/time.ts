/** Times as people read them: durations as `h:mm:ss`, clock times in the venue's time zone. */

const SECOND_MS = 1_000

/**
 * A duration in whole seconds passed: `1:12:46`, `6:12`, `0:23`. A negative one shows its size;
 * whoever calls puts "over" or "+" in front.
 */
export function figure(ms: number): string {
  return hoursMinutesSeconds(Math.floor(Math.abs(ms) / SECOND_MS))
}

/** What is left, rounded up, so that `0:00` is shown only once it is due. Never negative. */
export function countdown(ms: number): string {
  return hoursMinutesSeconds(Math.ceil(Math.max(0, ms) / SECOND_MS))
}

/** A length as rules write it: `0:45` hours and minutes, seconds only where there are any. */
export function hoursMinutes(ms: number): string {
  const seconds = Math.round(ms / SECOND_MS)
  const minutes = Math.floor(seconds / 60)
  const text = `${Math.floor(minutes / 60)}:${two(minutes % 60)}`
  return seconds % 60 === 0 ? text : `${text}:${two(seconds % 60)}`
}

/** About how long ago, for labels: `12 s`, `4 min`, `3 h`. */
export function about(ms: number): string {
  const seconds = Math.round(Math.abs(ms) / SECOND_MS)
  if (seconds < 60) return `${seconds} s`
  if (seconds < 5_400) return `${Math.round(seconds / 60)} min`
  return `${Math.round(seconds / 3_600)} h`
}

export interface ClockTimeOptions {
  readonly seconds?: boolean
  /** Another instant: where the calendar day differs from its day at the venue, the day is said. */
  readonly dayRelativeTo?: number
}

/** `14:08`, `14:08:14`, or `Sun 02:10` on another day than `dayRelativeTo`. */
export function clockTime(at: number, timeZone: string, options: ClockTimeOptions = {}): string {
  const there = partsAt(at, timeZone)
  const time = `${there.hour}:${there.minute}${options.seconds === true ? `:${there.second}` : ''}`
  const { dayRelativeTo } = options
  if (dayRelativeTo === undefined) return time
  return dayOf(there) === dayOf(partsAt(dayRelativeTo, timeZone))
    ? time
    : `${there.weekday} ${time}`
}

/** The venue's calendar date in the device's own way of writing it. */
export function calendarDate(at: number, timeZone: string): string {
  const zone = isTimeZone(timeZone) ? timeZone : 'UTC'
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeZone: zone }).format(at)
}

/** `2026-03-28T23:08:14`, as a field for date and time takes it. */
export function venueTime(at: number, timeZone: string): string {
  const there = partsAt(at, timeZone)
  return `${dayOf(there)}T${there.hour}:${there.minute}:${there.second}`
}

/**
 * The instant at which the venue's clocks show this date and time (`2026-03-28T23:08` or with seconds);
 * undefined where it is not one. Of the two instants in the hour that comes twice it is the first; a time
 * that a change of clocks leaves out is read as if they had not been changed yet.
 */
export function atVenueTime(text: string, timeZone: string): number | undefined {
  const wanted = Date.parse(`${text}Z`)
  if (Number.isNaN(wanted)) return undefined
  const offset = (at: number) => Date.parse(`${venueTime(at, timeZone)}Z`) - at
  const dayBefore = wanted - offset(wanted - 86_400_000)
  return (
    [dayBefore, wanted - offset(dayBefore)].find((at) => at + offset(at) === wanted) ?? dayBefore
  )
}

export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: name })
    return name !== ''
  } catch {
    return false
  }
}

function hoursMinutesSeconds(seconds: number): string {
  const minutes = Math.floor(seconds / 60)
  const hours = Math.floor(minutes / 60)
  return hours > 0
    ? `${hours}:${two(minutes % 60)}:${two(seconds % 60)}`
    : `${minutes}:${two(seconds % 60)}`
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}

type Parts = Readonly<Record<string, string>>

/** A formatter costs about a tenth of a millisecond to make, so each zone's is kept. */
const formatters = new Map<string, Intl.DateTimeFormat>()

function partsAt(at: number, timeZone: string): Parts {
  let formatter = formatters.get(timeZone)
  if (formatter === undefined) {
    formatter = new Intl.DateTimeFormat('en-GB', {
      timeZone: isTimeZone(timeZone) ? timeZone : 'UTC',
      hourCycle: 'h23',
      weekday: 'short',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    })
    formatters.set(timeZone, formatter)
  }
  return Object.fromEntries(formatter.formatToParts(at).map(({ type, value }) => [type, value]))
}

function dayOf(parts: Parts): string {
  return `${parts.year}-${parts.month}-${parts.day}`
}
