/** Documents and race → the planner's problem, by literals. */
import { RULE_KINDS, type Rule } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { HOUR, meantOf, MINUTE, personId, PLAIN, type Given } from '../testing/meant.ts'
import { groundOf } from './ground.ts'
import { problemOf } from './problem-of.ts'
import { RULE_MAP } from './rule-map.ts'

const people = [
  { name: 'Ana', paceMs: 9_000, categories: ['novice'] },
  { name: 'Ben', paceMs: 11_000, duties: ['controller' as const] },
  { name: 'Cem' },
]
const problem = (given: Partial<Given>, settings = {}) => {
  const ground = groundOf(meantOf({ segments: [60, 40], people, ...given }))
  if (!ground) throw new Error('There is no ground.')
  return problemOf(ground, { ...PLAIN, ...settings })
}
const mapped = (...rules: Rule[]) => problem({ rules }).rules

test('every kind of rule has a row, and one that is not planned says why', () => {
  expect(Object.keys(RULE_MAP).sort()).toEqual(RULE_KINDS.map(({ kind }) => kind).sort())
  for (const row of Object.values(RULE_MAP)) {
    if ('notPlanned' in row) expect(row.notPlanned).toMatch(/\.$/)
  }
})

test('segments lie one after the other, with the stops of the plan', () => {
  const { segments } = problem({ stops: [[1, 20]], lanes: [4, 'sitOut'] })
  expect(segments).toEqual([
    {
      ...{ id: 's1', after: 'start', startsAt: 0, lengthMs: HOUR, lane: 4 },
      stops: [{ id: 't1', atMs: 20 * MINUTE, mandatory: true }],
    },
    // 60 min and a lane change of 5.
    {
      ...{ id: 's2', after: 'laneChange', startsAt: 65 * MINUTE, lengthMs: 40 * MINUTE },
      ...{ lane: 'sitOut', stops: [] },
    },
  ])
})

test('where stops are chosen those of the plan that are not kept go, and duties change at multiples', () => {
  const chosen = problem({ stops: [[1, 20]] }, { stopEveryMs: 10 * MINUTE }).segments[0]
  expect(chosen).toMatchObject({ stops: [], gridMs: 10 * MINUTE })
  const cuts = problem({}, { changeEveryMs: 15 * MINUTE }).segments.map(({ cutsMs }) => cutsMs)
  expect(cuts).toEqual([[15, 30, 45].map((m) => m * MINUTE), [15, 30].map((m) => m * MINUTE)])
})

test('people have their duties, and a pace that is not known is that of the others, known worse', () => {
  const [ana, ben, cem] = problem({}).people
  expect(ana).toMatchObject({
    ...{ id: personId(0), categories: ['novice'] },
    duties: ['controller', 'post', 'wall', 'bench'],
    // One per cent of 9,000.
    pace: { lapMs: 9_000, knownToMs: 90, slowerPerHourMs: 90 },
  })
  expect(ben?.duties).toEqual(['controller'])
  // (9,000 + 11,000) ÷ 2, known to five per cent.
  expect(cem?.pace).toMatchObject({ lapMs: 10_000, knownToMs: 500 })
})

test('a part that is not known yet is left out, and a rule without any goes', () => {
  const value = { atLeastMs: HOUR, atMostMs: 'notKnownYet' as const }
  expect(mapped({ id: 'r', kind: 'drivingTime', value })).toEqual([
    { id: 'r', kind: 'drivingTime', atLeastMs: HOUR },
  ])
  const unknown = { atMostMs: 'notKnownYet' as const }
  expect(mapped({ id: 'r', kind: 'drivingTime', value: unknown })).toEqual([])
})

test('marshals at posts of lanes are wanted segment by segment', () => {
  const rules: Rule[] = [
    { id: 'owed', kind: 'marshalsOwed', value: { count: 1, when: 'wholeRace' } },
    { id: 'tied', kind: 'postByLane', value: { tied: true } },
  ]
  const one = { kind: 'dutyWanted', duty: 'post', count: 1 }
  expect(problem({ rules, lanes: [4, 2] }).rules).toEqual([
    { ...one, id: 'owed/s1', segments: ['s1'], post: '4' },
    { ...one, id: 'owed/s2', segments: ['s2'], post: '2' },
  ])
})

test('what counts as driving, how long a stop is, and what goes together come from their rules', () => {
  const { counting, stop, joined } = problem({
    rules: [
      { id: 'a', kind: 'countsAsDriving', value: { what: 'stops', counts: false } },
      { id: 'b', kind: 'changeWithOneself', value: { begins: true } },
      {
        ...{ id: 'c', kind: 'stopMinimum' },
        value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' },
      },
      { id: 'd', kind: 'marshalWhileDriving', value: { allowed: true } },
    ],
  })
  expect(counting).toEqual({ stops: false, laneChanges: false, changeWithOneself: true })
  // In and out another 15 s.
  expect(stop).toEqual({ standsMs: 45_000, costsMs: 60_000 })
  expect(joined).toEqual([['controller', 'post']])
})

test('laps between changes are a time at the slowest pace', () => {
  // 20 laps of 11 s.
  expect(mapped({ id: 'r', kind: 'lapsBetweenChanges', value: { atLeast: 20 } })).toEqual([
    { id: 'r', kind: 'continuousDriving', atLeastMs: 220_000 },
  ])
})

test('a line that is kept is a pin, and a duty nobody has a rule for is wanted where it was asked for', () => {
  const span = { id: 'p1', person: personId(0), duty: 'controller' as const, segment: 's1' }
  const spans = [{ ...span, fromMs: 0, toMs: 20 * MINUTE, pinned: true as const }]
  const { pins, rules } = problem({ spans }, { duties: ['wall'] })
  expect(pins).toEqual([
    {
      ...{ id: 'pin/p1', kind: 'span', person: personId(0), duty: 'controller', segment: 's1' },
      ...{ fromMs: 0, toMs: 20 * MINUTE },
    },
  ])
  expect(rules).toEqual([{ id: 'need/wall', kind: 'dutyWanted', duty: 'wall', count: 1 }])
})

test('a relief that comes early is kept from when the post is its own', () => {
  const spans = (['Ana', 'Cem'] as const).map((_, place) => ({
    ...{ id: `p${place}`, person: personId(2 * place), duty: 'post' as const, segment: 's1' },
    // 0 to 30 min, and from 5 min before.
    ...{ fromMs: place * 25 * MINUTE, toMs: (place + 1) * 30 * MINUTE },
    pinned: true as const,
  }))
  const value = { before: true, byMs: 5 * MINUTE }
  const kept = (rules: Rule[]) => problem({ spans, rules }).pins
  const [ana, cem] = kept([{ id: 'r', kind: 'relief', value }])
  expect(ana).toMatchObject({ fromMs: 0, toMs: 30 * MINUTE })
  expect(cem).toMatchObject({ fromMs: 30 * MINUTE, toMs: 60 * MINUTE })
  expect(kept([])[1]).toMatchObject({ fromMs: 25 * MINUTE })
})

test('wishes are what people asked for', () => {
  const [ana = { name: '' }, ...others] = people
  const wishList = [{ id: 'w1', kind: 'notAtEnd' as const, which: 'first' as const }]
  expect(problem({ people: [{ ...ana, wishList }, ...others] }).wishes).toEqual([
    {
      ...{ id: `wish/${personId(0)}/w1`, kind: 'notAtEnd', person: personId(0) },
      ...{ which: 'first', laps: 5 },
    },
  ])
})

test('a long rest lies anywhere in the race, or in each night', () => {
  const value = { who: 'novice', atLeastMs: HOUR, marshalling: 'notKnownYet' as const }
  const rest = { id: 'rest', kind: 'restBlock' as const }
  const planned = { ...rest, who: 'novice', atLeastMs: HOUR, marshallingIsRest: false }
  expect(mapped({ ...rest, value })).toEqual([planned])
  const night = { ...rest, value: { ...value, from: HOUR, to: 0.5 * HOUR } }
  // Nobody knows yet when midnight is.
  expect(mapped(night)).toEqual([])
  const meant = meantOf({ segments: [60, 40], people, rules: [night] })
  const rules = meant.drafts.rules && { ...meant.drafts.rules, midnightAt: 20 * MINUTE }
  const ground = groundOf({ ...meant, drafts: { ...meant.drafts, rules } })
  if (!ground) throw new Error('There is no ground.')
  // Green is 20 min before midnight: the night before ends 30 min after it, the next begins 1 h after it; 60 + 5 + 40 min.
  const windows = [
    { fromAt: 0, toAt: 50 * MINUTE },
    { fromAt: 80 * MINUTE, toAt: 105 * MINUTE },
  ]
  expect(problemOf(ground, PLAIN).rules).toEqual([{ ...planned, windows }])
})
