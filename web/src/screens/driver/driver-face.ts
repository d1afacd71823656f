/** What one person's phone says: the stint while driving, the way to the next duty otherwise. */
import {
  dutyOf,
  nextDutyOf,
  planTimeline,
  stintClock,
  stopsDue,
  type Duty,
  type Obligation,
  type SegmentLane,
  type State,
  type StintClock,
} from '@pitlamp/race'
import { laneIn, laneNow, laneWords } from '../../parts/lane-words.ts'
import { DUTY_WORD, dutyWords, sentenceCase } from '../../parts/moves.ts'
import { steady } from '../../parts/steady.ts'
import { clockTime, countdown, figure } from '../../parts/time.ts'
import { urgencyOf, type Urgency } from '../../parts/urgency.ts'

export interface DriverFace {
  readonly driving: boolean
  /** `driving`, `post 4`, `off duty` */
  readonly duty: string
  readonly label: string
  /** Absent where nothing is planned. */
  readonly big?: string
  /** Seconds, smaller, where hours leave no room for them at full size. */
  readonly tail?: string
  readonly left?: number
  readonly urgency: Urgency
  readonly held: boolean
  readonly lines: readonly DriverLine[]
}

export interface DriverLine {
  readonly id: string
  readonly lead: string
  readonly what: string
  readonly when: string
}

export interface DriverSeen {
  readonly state: State
  readonly now: number
  readonly person: string
  readonly timeZone: string
}

export function driverFace(seen: DriverSeen): DriverFace {
  const stint = stintClock(seen.state, seen.now)
  return stint?.person === seen.person ? driving(stint, seen) : waiting(seen)
}

function driving(stint: StintClock, seen: DriverSeen): DriverFace {
  const all = {
    driving: true,
    duty: 'driving',
    held: !stint.running,
    lines: drivingLines(stint, seen),
  }
  const { toGoMs, lengthMs = 0 } = stint
  if (toGoMs === undefined) {
    return {
      ...all,
      label: 'You have driven for',
      ...large(figure(stint.drivenMs)),
      urgency: 'calm',
    }
  }
  const urgency = urgencyOf('stintEnd', toGoMs)
  if (toGoMs < 0) return { ...all, label: 'Over by', ...large(figure(toGoMs)), left: 0, urgency }
  const text = steady(countdown(toGoMs), countdown(Math.min(lengthMs, MINUTES_ONLY_MS)))
  return {
    ...all,
    label: 'Left in this stint',
    ...large(text),
    left: lengthMs > 0 ? toGoMs / lengthMs : 0,
    urgency,
  }
}

const MINUTES_ONLY_MS = 3_599_000

function waiting(seen: DriverSeen): DriverFace {
  const { state, now, person } = seen
  const duty = dutyOf(state, person)
  const next = nextDutyOf(state, person, now)
  const all = {
    driving: false,
    duty: duty === undefined ? DUTY_WORD.offDuty.toLowerCase() : ownDuty(duty.duty, duty.post),
    held: false,
  }
  if (!next)
    return {
      ...all,
      label: 'Nothing more is planned for you',
      urgency: 'calm',
      lines: waitingLines(seen),
    }
  const leftMs = next.startsAt - now
  const what = sentenceCase(dutyWords(next.span.duty, next.span.post))
  return {
    ...all,
    label: leftMs < 0 ? `${what}: due now, since` : `${what} in`,
    ...large(leftMs < 0 ? figure(leftMs) : countdown(leftMs)),
    urgency: urgencyOf('nextDuty', leftMs),
    lines: waitingLines(seen),
  }
}

/** `1:02:33` is shown as `1:02` with smaller seconds, so that the digits stay as tall as they are wide. */
function large(text: string): Pick<DriverFace, 'big' | 'tail'> {
  const [hours, minutes, seconds] = text.split(':')
  return seconds === undefined ? { big: text } : { big: `${hours}:${minutes}`, tail: seconds }
}

const GAP_MS = 60_000

/** What follows the stint at once, and what follows after a rest. */
function drivingLines({ plannedEndAt }: StintClock, seen: DriverSeen): readonly DriverLine[] {
  const stop = [...laneLine(laneNow(seen.state, seen.now)), ...nextStop(seen)]
  if (plannedEndAt === undefined) return [...stop, ...again(seen, seen.now)]
  const next = nextDutyOf(seen.state, seen.person, seen.now)
  const rests = next === undefined || next.startsAt - plannedEndAt > GAP_MS
  const duty = next && dutyWords(next.span.duty, next.span.post)
  const then = {
    id: 'then',
    lead: 'Then',
    what: rests ? 'off duty' : (duty ?? ''),
    when: about(plannedEndAt, seen),
  }
  const later =
    rests && next !== undefined && next.span.duty !== 'controller'
      ? [{ id: 'next', lead: 'Next', what: duty ?? '', when: about(next.startsAt, seen) }]
      : []
  return [...stop, then, ...later, ...again(seen, plannedEndAt)]
}

function waitingLines(seen: DriverSeen): readonly DriverLine[] {
  const next = nextDutyOf(seen.state, seen.person, seen.now)
  const isNext = next?.span.duty === 'controller'
  const drives = isNext ? [] : again(seen, seen.now)
  const lane = isNext ? laneLine(laneIn(seen.state, seen.now, next.span.segment)) : []
  const starts = next
    ? [
        {
          id: 'next',
          // What it is stands over the figure.
          lead: 'By the clock',
          what: '',
          when: about(next.startsAt, seen),
        },
      ]
    : []
  return [...lane, ...starts, ...drives]
}

/** Nothing where cars are free to change lane. */
function laneLine(lane: SegmentLane | undefined): readonly DriverLine[] {
  if (lane === undefined) return []
  return [{ id: 'lane', lead: 'Lane', what: laneWords(lane).replace(/^lane /, ''), when: '' }]
}

const STOPS: readonly Obligation['kind'][] = ['plannedStop', 'stopWindowCloses', 'stopWindowOpens']

function nextStop(seen: DriverSeen): readonly DriverLine[] {
  const [stop] = stopsDue(seen.state, seen.now)
    .filter(({ kind }) => STOPS.includes(kind))
    .sort((a, b) => a.dueAt - b.dueAt)
  if (!stop) return []
  const lead = {
    stopWindowOpens: 'Stop from',
    stopWindowCloses: 'Stop by',
    plannedStop: 'Next stop',
  }
  const kind = stop.kind as keyof typeof lead
  return [{ id: 'stop', lead: lead[kind], what: '', when: about(stop.dueAt, seen) }]
}

function again({ state, now, person, timeZone }: DriverSeen, after: number): readonly DriverLine[] {
  const next = planTimeline(state, now).spans.find(
    (span) => span.person === person && span.duty === 'controller' && span.fromAt > after,
  )
  const seen = { now, timeZone }
  return next
    ? [{ id: 'again', lead: 'You drive again', what: '', when: about(next.fromAt, seen) }]
    : []
}

function about(at: number, { now, timeZone }: Pick<DriverSeen, 'now' | 'timeZone'>): string {
  if (at <= now) return 'due now'
  return `about ${clockTime(at, timeZone, { dayRelativeTo: now })}`
}

function ownDuty(duty: Duty, post: string | undefined): string {
  return duty === 'controller' ? 'at the controller' : dutyWords(duty, post)
}
