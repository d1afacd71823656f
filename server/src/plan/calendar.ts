/**
 * The plan as a calendar file (RFC 5545): an event a span. Names and words are escaped and lines folded by the
 * library; only calendar names are not by its own fields, so they go in as extra ones, which are.
 */
import { inForce, personName, segmentName, type TimelineSpan } from '@pitlamp/race'
import ical, { ICalCalendarMethod, ICalEventStatus, type ICalCalendar } from 'ical-generator'
import { spanKey, type PlannedMeeting } from './planned-meeting.ts'
import { clockTime, lengthWords, zoneOf } from './wording.ts'

export interface CalendarOptions {
  /** One person's duties; everybody's without. */
  readonly person?: string
  /** Server time at which the file is made: it orders files of one SEQUENCE (RFC 5546, section 2.1.5). */
  readonly stampMs: number
}

/**
 * Every span of the plan that is a duty, and as cancelled those that an earlier plan had. Positions on a race
 * clock become times of day in UTC, in whole seconds; what is shorter is left out.
 */
export function calendarFile(planned: PlannedMeeting, options: CalendarOptions): string {
  const { meeting, state, timeline, gone } = planned
  const { person } = options
  const calendar = ical({ prodId: '//Pitlamp//Plan//EN', method: ICalCalendarMethod.PUBLISH })
  const name =
    person === undefined ? meeting.name : `${personName(state, person)} · ${meeting.name}`
  calendar.x({ 'X-WR-CALNAME': name, 'X-WR-CALDESC': origin(planned) })
  const file = { calendar, planned, options }
  for (const span of timeline.spans) addEvent(file, span, ICalEventStatus.CONFIRMED)
  for (const span of gone) addEvent(file, span, ICalEventStatus.CANCELLED)
  // The library leaves out the end of the last line.
  return `${calendar.toString()}\r\n`
}

interface File {
  readonly calendar: ICalCalendar
  readonly planned: PlannedMeeting
  readonly options: CalendarOptions
}

function addEvent(file: File, span: TimelineSpan, status: ICalEventStatus): void {
  const { meeting, state, now, revision } = file.planned
  const { person, stampMs } = file.options
  if (span.duty === 'offDuty' || (person !== undefined && span.person !== person)) return
  const [start, end] = [wholeSecond(span.fromAt), wholeSecond(span.toAt)]
  if (end <= start) return
  const { place } = inForce(state, 'rules', now) ?? {}
  const whose = person === undefined ? `${personName(state, span.person)} · ` : ''
  file.calendar.createEvent({
    id: `${spanKey(span)}@${meeting.id}.pitlamp`,
    sequence: revision,
    stamp: wholeSecond(stampMs),
    ...{ start, end, status },
    summary: `${whose}${dutyWords(span)} · ${segmentName(state, span.segment)}`,
    description: descriptionOf(file.planned, span),
    ...(place !== undefined && { location: place }),
  })
}

function dutyWords({ duty, post }: TimelineSpan): string {
  switch (duty) {
    case 'controller':
      return 'Drive'
    case 'post':
      return post === undefined ? 'Marshal' : `Marshal post ${post}`
    case 'wall':
      return 'Wall'
    case 'bench':
      return 'Bench'
    case 'offDuty':
      return 'Off duty'
  }
}

function descriptionOf(planned: PlannedMeeting, span: TimelineSpan): string {
  const zone = zoneOf(planned.state, planned.now)
  const { fromAt, toAt, fromMs, toMs } = span
  return [
    `${lengthWords(toMs - fromMs)} on the race clock, from ${lengthWords(fromMs)}.`,
    `Times are about: ${clockTime(fromAt, zone)} to ${clockTime(toAt, zone)}.`,
    origin(planned),
  ].join('\n')
}

function origin({ state, now, adopted }: PlannedMeeting): string {
  const asOf = `as of ${clockTime(now, zoneOf(state, now))}`
  return adopted ? `The adopted plan, ${asOf}.` : `A draft that is not adopted yet, ${asOf}.`
}

function wholeSecond(at: number): Date {
  return new Date(Math.floor(at / 1_000) * 1_000)
}
