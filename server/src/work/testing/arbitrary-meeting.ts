/** Meetings of any shape and any mix of rules, small enough to be worked out in a moment. */
import { NOT_KNOWN_YET, type Rule } from '@pitlamp/race'
import fc from 'fast-check'
import { MINUTE, type Given } from './meant.ts'

const minutes = (from: number, to: number) =>
  fc.integer({ min: from, max: to }).map((m) => m * 5 * MINUTE)
const count = (from: number, to: number) => fc.integer({ min: from, max: to })
const asked = <T>(value: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 8, arbitrary: value }, { weight: 1, arbitrary: fc.constant(NOT_KNOWN_YET) })
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(asked(value), { nil: undefined })
const who = fc.option(fc.constantFrom('novice', 'captain'), { nil: undefined, freq: 3 })

const VALUES: readonly fc.Arbitrary<Omit<Rule, 'id'>>[] = [
  of('drivingTime', { who, atLeastMs: maybe(minutes(1, 4)), atMostMs: maybe(minutes(8, 20)) }),
  of('drivingShare', { atLeast: maybe(count(50, 200)), atMost: maybe(count(400, 700)) }),
  of('drivingSegments', { atLeast: maybe(count(1, 1)), atMost: maybe(count(1, 3)) }),
  of('equalShare', { of: fc.constant('time'), toleranceMs: maybe(minutes(2, 6)) }),
  of('drivingSpread', { atMostMs: asked(minutes(4, 10)) }),
  of('continuousDriving', { who, atLeastMs: maybe(minutes(1, 2)), atMostMs: maybe(minutes(5, 9)) }),
  of('rollingDriving', { atMostMs: asked(minutes(6, 12)), withinMs: asked(minutes(12, 20)) }),
  of('blockDriving', { blockMs: asked(minutes(10, 14)), atMostMs: maybe(minutes(6, 10)) }),
  of('driverRest', {
    atLeastMs: maybe(minutes(1, 4)),
    shareOfStint: maybe(count(200, 900)),
    marshalling: asked(fc.constantFrom('isRest', 'isNotRest')),
  }),
  of('stintsEach', { atLeast: maybe(count(1, 2)), atMost: maybe(count(2, 4)) }),
  of('stintsInARow', { atMost: asked(count(1, 2)) }),
  of('numberOfDrivers', { atLeast: maybe(count(1, 3)), atMost: maybe(count(2, 4)) }),
  of('numberOfChanges', { of: fc.constantFrom('changes', 'stints'), atLeast: maybe(count(1, 4)) }),
  of('followingDrivers', {
    ...{ first: fc.constant('novice'), then: fc.constant('novice') },
    must: asked(fc.constant('mustNot')),
  }),
  of('endDriver', {
    which: fc.constantFrom('first', 'last'),
    ...{ who: fc.constant('novice'), may: asked(fc.constantFrom('must', 'mayNot')) },
  }),
  of('mayNotDo', { who: fc.constant('captain'), duty: fc.constantFrom('controller', 'post') }),
  of('changeAtStop', { changes: asked(fc.boolean()) }),
  of('changeWithOneself', { begins: asked(fc.boolean()) }),
  of('countsAsDriving', { what: fc.constant('stops'), counts: asked(fc.boolean()) }),
  of('stopMinimum', {
    minimumMs: asked(fc.constantFrom(45_000, 60_000)),
    ...{ from: fc.constant('stopped'), to: fc.constant('leaving') },
  }),
  of('mandatoryStops', { count: asked(count(1, 2)), per: fc.constantFrom('segment', 'race') }),
  of('closedPeriod', { of: fc.constant('segment'), firstMs: maybe(minutes(1, 2)) }),
  of('driverChange', {
    where: asked(fc.constantFrom('stoppedInPitLane', 'anywhere')),
    order: asked(fc.constantFrom('downFirst', 'anyOrder')),
  }),
  of('runningBetweenStops', { atLeastMs: asked(minutes(1, 3)) }),
  of('energy', { fullMs: maybe(minutes(6, 12)), atEmpty: fc.constant('stands') }),
  of('lapsBetweenChanges', { atLeast: asked(count(1, 30)) }),
  of('marshalsOwed', { count: asked(count(1, 1)), when: asked(fc.constant('wholeRace')) }),
  of('marshalShift', { atMostMs: maybe(minutes(6, 12)), restMs: maybe(minutes(1, 3)) }),
  of('marshalWhileDriving', { allowed: asked(fc.boolean()) }),
  of('relief', { before: asked(fc.boolean()), byMs: maybe(fc.constantFrom(0, 60_000)) }),
  of('restBlock', {
    atLeastMs: asked(minutes(1, 5)),
    marshalling: asked(fc.constantFrom('isRest', 'isNotRest')),
  }),
]

/** One rule of each kind at most. */
const rules = fc
  .subarray([...VALUES.keys()], { minLength: 1, maxLength: 9 })
  .chain((places) => fc.tuple(...places.map((place) => VALUES[place] as (typeof VALUES)[number])))
  .map((values) => values.map((value, place) => ({ id: `r${place}`, ...value }) as Rule))

const person = fc.record({
  paceMs: fc.integer({ min: 8_000, max: 11_000 }),
  categories: fc.subarray(['novice', 'captain']),
})

export const arbitraryMeeting: fc.Arbitrary<Given> = fc
  .record({
    segments: fc.array(fc.constantFrom(40, 60), { minLength: 1, maxLength: 3 }),
    between: fc.constantFrom('laneChange' as const, 'break' as const),
    people: fc.array(person, { minLength: 2, maxLength: 4 }),
    rules,
  })
  .map(({ segments, people, ...rest }) => ({
    ...{ segments, ...rest },
    people: people.map((one, place) => ({ name: `Person ${place + 1}`, ...one })),
    stops: segments.flatMap((length, place) =>
      Array.from({ length: length / 20 - 1 }, (_, stop) => [place + 1, (stop + 1) * 20] as const),
    ),
  }))

function of(kind: Rule['kind'], value: Readonly<Record<string, fc.Arbitrary<unknown>>>) {
  return fc.record({
    kind: fc.constant(kind),
    value: fc.record(value).map(withoutUndefined),
  }) as fc.Arbitrary<Omit<Rule, 'id'>>
}

function withoutUndefined(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined))
}
