/**
 * A plan of 24 h: one segment a lane, an hour each, 96 turns of a quarter of an hour at the controller and at the
 * post, the wall every half hour, stops where drivers change, ten people; and a rule of every kind that can be checked.
 */
import {
  CHECKS,
  type Crew,
  type Judged,
  type Rule,
  type Timeline,
  type TimelineSpan,
} from '@pitlamp/race'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const GREEN_AT = 1_800_086_400_000
const HOURS = 24
const DRIVERS = 8

export function longPlan(): Judged {
  const missing = Object.entries(CHECKS)
    .filter(
      ([kind, check]) => !('notChecked' in check) && !RULES.some((rule) => rule.kind === kind),
    )
    .map(([kind]) => kind)
  if (missing.length > 0) throw new Error(`The long plan has no rule of ${missing.join(', ')}.`)
  const regulations = {
    name: 'Twenty-four hours',
    timeZone: 'Europe/Dublin',
    programme: [],
    rules: [...RULES],
  }
  return { regulations, crew, timeline: timeline() }
}

const crew: Crew = {
  people: Array.from({ length: 10 }, (_, place) => ({
    ...{ id: `person-${place}`, name: `Person ${place}`, duties: [], paceMs: 9_000 + 50 * place },
    categories: place === 9 ? ['captain'] : place === 7 ? ['novice'] : ['driver'],
    there: [{ id: 'all', fromAt: GREEN_AT - HOUR, toAt: GREEN_AT + 30 * HOUR }],
  })),
}

function timeline(): Timeline {
  const hours = Array.from({ length: HOURS }, (_, hour) => hour)
  return {
    isWhole: true,
    notDriving: [],
    segments: hours.map((hour) => ({
      ...{ id: `s${hour}`, index: hour, lengthMs: HOUR, lane: (hour % 6) + 1, over: false },
      ...{ startsAt: startOf(hour), endsAt: startOf(hour) + HOUR },
      after: hour === 0 ? 'start' : 'laneChange',
    })),
    spans: hours.flatMap(spansOf).sort((a, b) => a.fromAt - b.fromAt),
    stops: hours.flatMap((hour) => [15, 30, 45].map((minute) => stop(hour, minute))),
  }
}

/** Where drivers change; the last of an hour is the mandatory one. */
function stop(hour: number, minute: number): Timeline['stops'][number] {
  const atMs = minute * MINUTE
  const place = { segment: `s${hour}`, atMs, at: startOf(hour) + atMs }
  const mandatory = minute === 45
  return { id: `stop-${hour}-${minute}`, ...place, mandatory, tasks: ['Tyres'], done: false }
}

/** Five minutes of lane change between two segments. */
function startOf(hour: number): number {
  return GREEN_AT + hour * (HOUR + 5 * MINUTE)
}

function spansOf(hour: number): readonly TimelineSpan[] {
  const quarters = [0, 1, 2, 3].flatMap((quarter) => {
    const turn = hour * 4 + quarter
    const stretch = { hour, from: quarter * 15, to: quarter * 15 + 15 }
    const post = {
      duty: 'post',
      person: (turn + 3) % DRIVERS,
      post: String((hour % 6) + 1),
    } as const
    return [
      span({ ...stretch, duty: 'controller', person: turn % DRIVERS }),
      span({ ...stretch, ...post }),
    ]
  })
  const halves = [0, 30].map((from) =>
    span({ hour, from, to: from + 30, duty: 'wall', person: from === 0 ? 8 : 9 }),
  )
  return [...quarters, ...halves]
}

interface Of {
  readonly hour: number
  readonly from: number
  readonly to: number
  readonly duty: TimelineSpan['duty']
  readonly person: number
  readonly post?: string
}

function span({ hour, from, to, duty, person, post }: Of): TimelineSpan {
  const [fromMs, toMs] = [from * MINUTE, to * MINUTE]
  return {
    ...{ id: `${duty}-${hour}-${from}`, person: `person-${person}`, duty, segment: `s${hour}` },
    ...{ fromMs, toMs, fromAt: startOf(hour) + fromMs, toAt: startOf(hour) + toMs, done: false },
    ...(post === undefined ? {} : { post }),
  }
}

const RULES: readonly Rule[] = [
  { id: 'r1', kind: 'drivingTime', value: { atLeastMs: 2 * HOUR, atMostMs: 4 * HOUR } },
  { id: 'r2', kind: 'drivingShare', value: { atLeast: 50, atMost: 600 } },
  { id: 'r3', kind: 'drivingSegments', value: { atLeast: 4, atMost: 20 } },
  { id: 'r4', kind: 'equalShare', value: { of: 'time', tolerance: 50 } },
  { id: 'r5', kind: 'drivingSpread', value: { atMostMs: 30 * MINUTE } },
  { id: 'r6', kind: 'continuousDriving', value: { atLeastMs: 10 * MINUTE, atMostMs: 70 * MINUTE } },
  { id: 'r7', kind: 'runningBetweenStops', value: { atLeastMs: 20 * MINUTE } },
  { id: 'r8', kind: 'changeAtStop', value: { changes: true } },
  { id: 'r9', kind: 'numberOfChanges', value: { of: 'changes', atLeast: 23, atMost: 100 } },
  { id: 'r35', kind: 'lapsBetweenChanges', value: { atLeast: 1 } },
  { id: 'r10', kind: 'rollingDriving', value: { atMostMs: 2 * HOUR, withinMs: 6 * HOUR } },
  { id: 'r11', kind: 'blockDriving', value: { blockMs: 6 * HOUR, atMostMs: 2 * HOUR } },
  { id: 'r12', kind: 'driverRest', value: { atLeastMs: 60 * MINUTE, marshalling: 'isNotRest' } },
  { id: 'r36', kind: 'restBlock', value: { atLeastMs: HOUR, marshalling: 'isNotRest' } },
  { id: 'r13', kind: 'stintsEach', value: { atLeast: 4, atMost: 20 } },
  { id: 'r14', kind: 'stintsInARow', value: { atMost: 2 } },
  { id: 'r15', kind: 'numberOfDrivers', value: { atLeast: 6, atMost: 10 } },
  {
    id: 'r16',
    kind: 'followingDrivers',
    value: { first: 'novice', must: 'mustNot', then: 'novice' },
  },
  { id: 'r17', kind: 'endDriver', value: { which: 'first', who: 'novice', may: 'mayNot' } },
  { id: 'r18', kind: 'mayNotDo', value: { who: 'captain', duty: 'controller' } },
  { id: 'r19', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } },
  { id: 'r20', kind: 'stopMinimum', value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' } },
  { id: 'r21', kind: 'stopWindows', value: { windows: windows() } },
  { id: 'r22', kind: 'stopRhythm', value: { everyMs: HOUR, toleranceMs: 20 * MINUTE } },
  {
    id: 'r23',
    kind: 'closedPeriod',
    value: { of: 'segment', firstMs: 10 * MINUTE, lastMs: 10 * MINUTE },
  },
  { id: 'r24', kind: 'stopTask', value: { task: 'tyres', times: 6 } },
  { id: 'r25', kind: 'driverChange', value: { where: 'stoppedInPitLane', order: 'downFirst' } },
  {
    id: 'r26',
    kind: 'energy',
    value: { fullLaps: 310, fullMs: 50 * MINUTE, leftAtEnd: 50, atEmpty: 'slows' },
  },
  { id: 'r27', kind: 'marshalsOwed', value: { count: 1, when: 'wholeRace' } },
  { id: 'r28', kind: 'marshalWhileDriving', value: { allowed: false } },
  { id: 'r29', kind: 'postByLane', value: { tied: true } },
  { id: 'r30', kind: 'marshalShift', value: { atMostMs: HOUR, restMs: 30 * MINUTE } },
  { id: 'r31', kind: 'relief', value: { before: true, byMs: 0 } },
  { id: 'r32', kind: 'sitOutDuty', value: { obliges: 'marshalSomePosts', posts: 2 } },
  {
    id: 'r33',
    kind: 'clockPolicy',
    value: { clock: 'driving', under: 'laneChange', does: 'holds' },
  },
  { id: 'r34', kind: 'countsAsDriving', value: { what: 'stops', counts: false } },
]

function windows() {
  return Array.from({ length: HOURS }, (_, hour) => ({
    ...{ id: `w${hour}`, segment: `s${hour}` },
    ...{ fromMs: 35 * MINUTE, toMs: 50 * MINUTE },
  }))
}
