/**
 * One typical rule of every kind, and the race it is put to: what it adds to the time is shown against the same race
 * without any rule of the kind. All numbers are common practice, no source. A kind without an example does not compile.
 */
import type { Problem, Rule } from '@pitlamp/planner'
import { chosenStops, fixedStops } from './instance.ts'

const MINUTE_MS = 60_000
const GIVEN = { slots: 24, people: 6 }
const CHOSEN = { hours: 3, people: 4 }

export type Race = keyof typeof RACES

export const RACES = {
  given: {
    name: '24 × 6, given stops',
    problem: (seed: number) => fixedStops(GIVEN, seed),
  },
  running: {
    name: '24 × 6, every other change while the car runs',
    problem: (seed: number) => withCuts(fixedStops(GIVEN, seed)),
  },
  withOneself: {
    name: '24 × 6, going on with oneself is a change',
    problem: (seed: number) => withOneself(fixedStops(GIVEN, seed)),
  },
  chosen: {
    name: '3 h × 4, stops chosen on 5 min',
    problem: (seed: number) => chosenStops(CHOSEN, seed),
  },
} as const satisfies Readonly<Record<string, { name: string; problem: (seed: number) => Problem }>>

function withCuts(problem: Problem): Problem {
  const segments = problem.segments.map((segment) => ({
    ...segment,
    stops: segment.stops.filter((_, place) => place % 2 === 0),
    cutsMs: segment.stops.filter((_, place) => place % 2 === 1).map(({ atMs }) => atMs),
  }))
  return { ...problem, segments }
}

/** Without rests, since nobody follows themselves after one. */
function withOneself(problem: Problem): Problem {
  const rules = problem.rules.filter(({ kind }) => kind !== 'driverRest')
  return { ...problem, rules, counting: { ...problem.counting, changeWithOneself: true } }
}

type Of<K extends Rule['kind']> = Extract<Rule, { kind: K }>

export interface Example<K extends Rule['kind']> {
  readonly race: Race
  readonly rule: Omit<Of<K>, 'id' | 'kind'>
}

const window = (place: number, fromMinute: number, toMinute: number) => ({
  segment: `segment-${place}`,
  fromMs: fromMinute * MINUTE_MS,
  toMs: toMinute * MINUTE_MS,
})

export const EXAMPLES: { readonly [K in Rule['kind']]: Example<K> } = {
  blockDriving: {
    race: 'given',
    rule: { blockMs: 180 * MINUTE_MS, atMostMs: 60 * MINUTE_MS },
  },
  changeAtStop: { race: 'given', rule: {} },
  closedPeriod: {
    race: 'chosen',
    rule: { of: 'segment', firstMs: 10 * MINUTE_MS, lastMs: 10 * MINUTE_MS },
  },
  continuousDriving: { race: 'given', rule: { atMostMs: 60 * MINUTE_MS } },
  driverChange: { race: 'running', rule: { where: 'anywhere', order: 'downFirst' } },
  driverRest: { race: 'given', rule: { atLeastMs: 30 * MINUTE_MS, marshallingIsRest: true } },
  drivingSegments: { race: 'given', rule: { atMost: 3 } },
  drivingShare: { race: 'given', rule: { atMost: 250 } },
  drivingSpread: { race: 'given', rule: { atMostMs: 30 * MINUTE_MS } },
  drivingTime: { race: 'given', rule: { atLeastMs: 30 * MINUTE_MS } },
  dutyWanted: { race: 'given', rule: { duty: 'post', count: 1 } },
  endDriver: { race: 'given', rule: { which: 'first', who: 'novice', must: false } },
  energy: { race: 'chosen', rule: { fullMs: 45 * MINUTE_MS, leftAtEnd: 100 } },
  equalShare: { race: 'given', rule: { of: 'time', toleranceMs: 15 * MINUTE_MS } },
  followingDrivers: { race: 'given', rule: { first: 'novice', must: false, then: 'novice' } },
  mandatoryStops: { race: 'chosen', rule: { count: 2, per: 'segment' } },
  marshalShift: {
    race: 'given',
    rule: { atMostMs: 60 * MINUTE_MS, restMs: 30 * MINUTE_MS },
  },
  mayNot: { race: 'given', rule: { who: 'novice', duty: 'post' } },
  numberOfChanges: { race: 'given', rule: { of: 'changes', atLeast: 12 } },
  numberOfDrivers: { race: 'given', rule: { atLeast: GIVEN.people } },
  relief: { race: 'running', rule: { before: true, byMs: 2 * MINUTE_MS } },
  restBlock: { race: 'given', rule: { atLeastMs: 60 * MINUTE_MS, marshallingIsRest: true } },
  rollingDriving: {
    race: 'given',
    rule: { atMostMs: 120 * MINUTE_MS, withinMs: 300 * MINUTE_MS },
  },
  runningBetweenStops: { race: 'chosen', rule: { atLeastMs: 20 * MINUTE_MS } },
  stintsEach: { race: 'given', rule: { atMost: 3 } },
  stintsInARow: { race: 'withOneself', rule: { atMost: 2 } },
  stopRhythm: {
    race: 'chosen',
    rule: { everyMs: 45 * MINUTE_MS, toleranceMs: 10 * MINUTE_MS },
  },
  stopTask: { race: 'chosen', rule: { task: 'tyres', times: 3 } },
  stopWindows: {
    race: 'chosen',
    rule: { windows: [window(1, 20, 40), window(1, 50, 70), window(2, 20, 40), window(2, 50, 70)] },
  },
}
