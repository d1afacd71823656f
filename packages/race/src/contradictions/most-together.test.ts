import { expect, test } from 'vitest'
import { mostTogether } from './most-together.ts'
import { crewOf, HOUR, rule, said, segment } from './testing/looking.ts'

const each = (hours: number) => rule('drivingTime', { atMostMs: hours * HOUR })

test('24 h with at most 14 h each take two drivers', () => {
  // 24 h Le Mans: at most 14 h in all. 2 × 14 = 28.
  expect(said(mostTogether, [each(14)], { programme: 24, people: crewOf(2) })).toEqual([])
  expect(said(mostTogether, [each(12)], { programme: 24, people: crewOf(2) })).toEqual([])
  expect(said(mostTogether, [each(14)], { programme: 24, people: crewOf(1) })).toEqual([
    'One driver may not drive as long as there is to drive. Together they may drive 14:00, and there is 24:00 to drive.',
  ])
})

test('of a larger crew as many count as may drive', () => {
  const rules = [each(5), rule('numberOfDrivers', { atMost: 4 })]
  // 4 × 5 = 20 of 24 h, however many there are.
  expect(said(mostTogether, rules, { programme: 24, people: crewOf(8) })).toHaveLength(1)
  expect(said(mostTogether, rules, { programme: 24 })).toHaveLength(1)
  expect(said(mostTogether, [each(5)], { programme: 24 })).toEqual([])
  expect(said(mostTogether, rules, { programme: 20, people: crewOf(8) })).toEqual([])
})

test('whoever no rule limits drives the rest', () => {
  const novice = rule('drivingTime', { who: 'novice', atMostMs: HOUR })
  const people = { Ana: { categories: ['novice'] }, Ben: {} }
  expect(said(mostTogether, [novice], { programme: 3, people })).toEqual([])
  expect(said(mostTogether, [novice], { programme: 3, people: { Ana: people.Ana } })).toHaveLength(
    1,
  )
})

test('a lane not drawn yet may be a sit-out, which nobody need drive', () => {
  const programme = [segment('s1'), segment('s2', 60, { lane: 'notDrawnYet' })]
  expect(said(mostTogether, [each(1)], { programme, people: crewOf(1) })).toEqual([])
})

test('somebody drives in each segment', () => {
  const rules = [rule('drivingSegments', { atMost: 2 })]
  expect(said(mostTogether, rules, { programme: 6, people: crewOf(3) })).toEqual([])
  expect(said(mostTogether, rules, { programme: 7, people: crewOf(3) })).toEqual([
    '3 drivers may drive in 6 segments together. There are 7 segments with a lane, and somebody must drive in each.',
  ])
})

test('a window of driving is filled by all together', () => {
  // At most 3 h in any 5 h: two may drive 6, one 3.
  const rules = [rule('rollingDriving', { atMostMs: 3 * HOUR, withinMs: 5 * HOUR })]
  const programme = [segment('s1', 6 * 60)]
  expect(said(mostTogether, rules, { programme, people: crewOf(2) })).toEqual([])
  expect(said(mostTogether, rules, { programme, people: crewOf(1) })).toEqual([
    'One driver cannot fill 5:00 without a break. Each may drive 3:00 of it, 3:00 together.',
  ])
  // In segments of an hour there are breaks to rest in.
  expect(said(mostTogether, rules, { programme: 6, people: crewOf(1) })).toEqual([])
})
