import { expect, test } from 'vitest'
import { leastTogether } from './least-together.ts'
import { crewOf, HOUR, looking, MINUTE, rule, said, segment } from './testing/looking.ts'

const each = (minutes: number) => rule('drivingTime', { atLeastMs: minutes * MINUTE })
const drivers = (count: number) => rule('numberOfDrivers', { atLeast: count })

test('six hours among four drivers: 90 min each just fit, 91 do not', () => {
  // 4 × 90 = 360 min; 4 × 91 = 364 = 6:04.
  expect(said(leastTogether, [each(90), drivers(4)], { programme: 6 })).toEqual([])
  expect(looking(leastTogether, [each(91), drivers(4)], { programme: 6 })).toEqual([
    {
      id: 'leastTogether:numberOfDrivers:drivingTime',
      rules: ['numberOfDrivers', 'drivingTime'],
      what: '4 drivers must drive more than there is to drive.',
      why: 'Together that is 6:04, and there is 6:00 to drive.',
    },
  ])
})

test('without a number of drivers it is said of the crew', () => {
  // 7 × 60 = 7 h of 6.
  expect(said(leastTogether, [each(60)], { programme: 6, people: crewOf(6) })).toEqual([])
  expect(said(leastTogether, [each(60)], { programme: 6, people: crewOf(7) })).toEqual([
    'Not all of 7 drivers in the crew can drive as long as a driver must. Together that is 7:00, and there is 6:00 to drive.',
  ])
  // One of the seven only marshals.
  const people = { ...crewOf(6), p7: { duties: ['post' as const] } }
  expect(said(leastTogether, [each(60)], { programme: 6, people })).toEqual([])
})

test('a share, and stints of a length, are minima as well', () => {
  const share = (perMille: number) => rule('drivingShare', { atLeast: perMille })
  expect(said(leastTogether, [share(250), drivers(4)])).toEqual([])
  expect(said(leastTogether, [share(251), drivers(4)])).toHaveLength(1)
  // Three stints of 6 min are 18 for each of three: 54 of 60; four are 72.
  const stints = (count: number) => [
    ...[rule('stintsEach', { atLeast: count }), drivers(3)],
    rule('continuousDriving', { atLeastMs: 6 * MINUTE }),
  ]
  expect(said(leastTogether, stints(3))).toEqual([])
  expect(said(leastTogether, stints(4))).toHaveLength(1)
})

test('a category’s minimum counts for its people, and sit-outs are not there to drive', () => {
  const novice = rule('drivingTime', { who: 'novice', atLeastMs: 40 * MINUTE })
  const people = { Ana: { categories: ['Novice'] }, Ben: {} }
  expect(said(leastTogether, [novice], { people })).toEqual([])
  const both = { Ana: { categories: ['novice'] }, Ben: { categories: ['novice'] } }
  expect(said(leastTogether, [novice], { people: both })).toHaveLength(1)
  const programme = [segment('s1'), segment('s2', 60, { lane: 'sitOut' })]
  expect(said(leastTogether, [each(40), drivers(2)], { programme })).toEqual([
    '2 drivers must drive more than there is to drive. Together that is 1:20, and there is 1:00 to drive.',
  ])
})

test('nobody drives in more segments than there are', () => {
  const segments = (count: number) =>
    said(leastTogether, [rule('drivingSegments', { atLeast: count })], { programme: 4 })
  expect(segments(4)).toEqual([])
  expect(segments(5)).toEqual([
    'Each driver must drive in 5 segments. There are only 4 segments with a lane.',
  ])
  const laps = [segment('s1', 0, { length: { by: 'laps', laps: 100 } })]
  expect(
    said(leastTogether, [rule('drivingTime', { atLeastMs: HOUR }), drivers(9)], {
      programme: laps,
    }),
  ).toEqual([])
})

test('stints demanded have room in the race', () => {
  // Six hours: 12 stints of 30 min, or 11 changes.
  const length = rule('continuousDriving', { atLeastMs: 30 * MINUTE })
  const number = (of: 'stints' | 'changes', atLeast: number) =>
    said(leastTogether, [rule('numberOfChanges', { of, atLeast }), length], { programme: 6 })
  expect(number('stints', 12)).toEqual([])
  expect(number('changes', 11)).toEqual([])
  expect(number('stints', 13)).toHaveLength(1)
  expect(number('changes', 12)).toEqual([
    '13 stints of at least 0:30 are more than there is to drive. Together that is 6:30, and there is 6:00 to drive.',
  ])
})
