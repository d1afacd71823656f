/** What a plan is worth, reckoned by hand: the reckoning that judges the planner is judged itself. */
import type { Problem, Segment, Wish } from '@pitlamp/planner'
import { expect, it } from 'vitest'
import { worthOf } from './worth.ts'
import type { Sheet } from './driven.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE

/** Two segments of an hour, ten minutes apart, a stop at half time of each; all lap in 10 s and never tire. */
function problem(of: Partial<Problem> = {}, after: Segment['after'] = 'laneChange'): Problem {
  const segment = (place: number): Segment => ({
    ...{ id: `s${place + 1}`, after: place === 0 ? 'start' : after, lengthMs: HOUR },
    startsAt: place * (HOUR + 10 * MINUTE),
    stops: [{ id: `t${place + 1}`, atMs: 30 * MINUTE, mandatory: true }],
  })
  return {
    segments: [segment(0), segment(1)],
    people: ['ada', 'ben'].map((id) => ({
      ...{ id, duties: ['controller', 'post'] as const, categories: [] },
      pace: { lapMs: 10_000, knownToMs: 0, slowerPerHourMs: 0, findingInLaps: 2 },
    })),
    ...{ rules: [], wishes: [], pins: [], joined: [], dutyChangeLaps: 0.5 },
    stop: { standsMs: MINUTE, costsMs: 2 * MINUTE },
    counting: { stops: true, laneChanges: false, changeWithOneself: false },
    balance: { toleranceMs: 10 * MINUTE, lapsPerHour: 12 },
    ...of,
  }
}

const line = (person: string, segment: number, [from, to]: readonly [number, number]) => ({
  ...{ id: `${person}${segment}${from}`, person, duty: 'controller' as const },
  ...{ segment: `s${segment}`, fromMs: from * MINUTE, toMs: to * MINUTE },
})
const stops = [1, 2].map((place) => ({
  ...{ id: `t${place}`, segment: `s${place}`, atMs: 30 * MINUTE, mandatory: true },
}))
/** Ada, Ben over the lane change, Ada. */
const turns: Sheet = {
  spans: [
    line('ada', 1, [0, 30]),
    line('ben', 1, [30, 60]),
    line('ben', 2, [0, 30]),
    line('ada', 2, [30, 60]),
  ],
  stops,
}
/** Two hours less two stops of two minutes are 116 min of 6 laps each: 696; three stints take 2 each to find in. */
const LAPS = 690

it('counts laps between stops, and finding in once a stint, which goes on over a lane change', () => {
  expect(worthOf(problem(), turns)).toBeCloseTo(LAPS, 9)
})

it('begins a stint anew after a break', () => {
  expect(worthOf(problem({}, 'break'), turns)).toBeCloseTo(LAPS - 2, 9)
})

it('has tiredness grow from the beginning of the stint, the lane change included', () => {
  // 10 % an hour. Ada: 15 min in, 30 min and 28 min at 10 250 ms: 3 480 s ÷ 10.25 s = 339.512.
  // Ben: 28 min at 10 250 ms: 163.902; from 40 min to 70 min after he began, in the middle 55 min: 1 800 s ÷ 10.9166… s
  // = 164.885. Together 668.300, less 6.
  const people = problem().people.map(({ pace, ...one }) => ({
    ...one,
    ...(pace ? { pace: { ...pace, slowerPerHourMs: 1_000 } } : {}),
  }))
  expect(worthOf(problem({ people }), turns)).toBeCloseTo(662.3, 3)
})

it('takes off for what somebody drives beyond the tolerance around the equal share', () => {
  // Ada alone: one stint, so 694. 60 min too much and Ben 60 min too little, 50 each beyond 10: 100 min at 12 an hour = 20.
  const alone = [line('ada', 1, [0, 60]), line('ada', 2, [0, 60])]
  expect(worthOf(problem(), { spans: alone, stops })).toBeCloseTo(694 - 20, 9)
  // Where stops do not count it is 118 min: 48 + 50 = 98 min, 19.6 laps. With the lane change 128 min: 58 + 50, 21.6.
  const counting = { stops: false, laneChanges: false, changeWithOneself: false }
  expect(worthOf(problem({ counting }), { spans: alone, stops })).toBeCloseTo(694 - 19.6, 9)
  const both = { ...counting, laneChanges: true }
  expect(worthOf(problem({ counting: both }), { spans: alone, stops })).toBeCloseTo(694 - 21.6, 9)
})

it('counts a duty taken up, and not one that goes on over a lane change', () => {
  const post = [
    { ...line('ben', 1, [0, 60]), duty: 'post' as const },
    { ...line('ben', 2, [0, 30]), duty: 'post' as const },
    { ...line('ada', 2, [30, 60]), duty: 'post' as const },
  ]
  expect(worthOf(problem(), { ...turns, spans: [...turns.spans, ...post] })).toBeCloseTo(
    LAPS - 1,
    9,
  )
})

it('has whoever waits at a stop that was chosen lose laps at a fresh pace', () => {
  const [first, second] = problem().segments.map((one) => ({
    ...{ ...one, stops: [] },
    gridMs: 30 * MINUTE,
  }))
  const segments = [first, second].flatMap((one) => one ?? [])
  const alone = [line('ada', 1, [0, 60]), line('ben', 2, [0, 60])]
  // No stop at all: 720 laps less 4. One in the first segment: 12 less.
  expect(worthOf(problem({ segments }), { spans: alone, stops: [] })).toBeCloseTo(716, 9)
  expect(worthOf(problem({ segments }), { spans: alone, stops: stops.slice(0, 1) })).toBeCloseTo(
    704,
    9,
  )
})

const about = { id: 'wish', person: 'ada', laps: 7 }
const ahead = (minutes: number) => minutes * MINUTE

it.each<readonly [string, Wish, 'kept' | 'missed']>([
  ['beside', { ...about, kind: 'beside', other: 'ben' }, 'missed'],
  ['after', { ...about, kind: 'follows', where: 'after', other: 'ben' }, 'kept'],
  ['not first', { ...about, kind: 'notAtEnd', which: 'first' }, 'missed'],
  ['not first', { ...about, person: 'ben', kind: 'notAtEnd', which: 'first' }, 'kept'],
  ['not last', { ...about, kind: 'notAtEnd', which: 'last' }, 'missed'],
  // Ada drives from 0 to 30 and from 100 to 130 min.
  ['not between', notBetween(20, 40), 'missed'],
  ['not between', notBetween(30, 100), 'kept'],
  ['no more than', { ...about, kind: 'noMoreThan', atMostMs: ahead(60) }, 'kept'],
  ['no more than', { ...about, kind: 'noMoreThan', atMostMs: ahead(59) }, 'missed'],
  ['a block off', blockOff(70, 130), 'kept'],
  ['a block off', blockOff(71, 130), 'missed'],
  ['a block off', blockOff(70, 99), 'missed'],
])('a wish is kept or missed: %s', (_, wish, expected) => {
  const worth = worthOf(problem({ wishes: [wish] }), turns)
  expect(worth).toBeCloseTo(expected === 'kept' ? LAPS : LAPS - 7, 9)
})

it('a driver after somebody else than wished for misses it', () => {
  const people = [
    ...problem().people,
    ...problem()
      .people.slice(1)
      .map((one) => ({ ...one, id: 'cem' })),
  ]
  const wish: Wish = { ...about, kind: 'follows', where: 'after', other: 'cem' }
  const fair = { toleranceMs: 2 * HOUR, lapsPerHour: 12 }
  const worth = worthOf(problem({ people, wishes: [wish], balance: fair }), turns)
  expect(worth).toBeCloseTo(LAPS - 7, 9)
})

function notBetween(from: number, to: number): Wish {
  const within = { fromAt: ahead(from), toAt: ahead(to) }
  return { ...about, kind: 'notBetween', duties: ['controller'], ...within }
}

function blockOff(length: number, to: number): Wish {
  return { ...about, kind: 'blockOff', lengthMs: ahead(length), fromAt: 0, toAt: ahead(to) }
}
