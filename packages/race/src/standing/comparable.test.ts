import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { changedTo } from '../testing/changed.ts'
import { classify } from '../testing/classified.ts'
import { greenOf, laneMeeting, LANE_RULES, runSegments } from '../testing/lane-meeting.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { comparableAt } from './comparable.ts'
import { standing } from './standing.ts'

const order = (sitOutsAfter: number[]): Rule => {
  return { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter } }
}
const four: readonly Rule[] = [
  { id: 'track', kind: 'tracks', value: { tracks: 1, lanes: 3 } },
  order([2]),
]
const after = (segments: number, rules: readonly Rule[] = four) => {
  const pressing = runSegments(laneMeeting({ rules, segments: 9 }), 1, segments)
  const { is, over, through, round } = comparableAt(
    pressing.state(),
    greenOf(segments + 1) - MINUTE,
  )
  return [is, over, through, round]
}

test('on fixed lanes it is too early before every team has had every lane', () => {
  // Three lanes and a sit-out: a round is four segments.
  expect(after(0)).toEqual(['tooEarly', 0, 0, 4])
  expect(after(3)).toEqual(['tooEarly', 0, 3, 4])
  expect(after(4)).toEqual(['yes', 4, 4, 4])
})

test('between two rounds only the segments of whole rounds compare', () => {
  expect(after(6)).toEqual(['overSegments', 4, 6, 4])
  expect(after(8)).toEqual(['yes', 8, 8, 4])
})

test('while a segment runs only what was before it compares', () => {
  const pressing = runSegments(laneMeeting({ rules: four, segments: 9 }), 1, 4)
  pressing.press(greenOf(5), 'green.1', { segment: 's5' })
  const state = pressing.state()
  expect(comparableAt(state, greenOf(5) + MINUTE).is).toBe('overSegments')
  // As it was before that green.
  expect(comparableAt(state, greenOf(5) - MINUTE).is).toBe('yes')
})

test('a segment to be run again is not through, an abandoned one is', () => {
  const pressing = runSegments(laneMeeting({ rules: four, segments: 9 }), 1, 4)
  const now = greenOf(5) - MINUTE
  changedTo(pressing, now - MINUTE, {
    ...{ segment: 's4', what: 'runAgain', lapsCount: false, drivingCounts: false },
  })
  expect(comparableAt(pressing.state(), now)).toMatchObject({ is: 'tooEarly', through: 3 })
  changedTo(pressing, now, { segment: 's4', what: 'abandoned' })
  expect(comparableAt(pressing.state(), now)).toMatchObject({ is: 'yes', through: 4 })
})

test('without an order the whole race is the round; groups take as many times as long', () => {
  const [track] = four
  expect(after(8, track ? [track] : [])).toEqual(['tooEarly', 0, 8, 9])
  const groups: Rule = { id: 'order', kind: 'laneOrder', value: { moves: 'groups', groups: 2 } }
  // Three lanes by two groups.
  expect(after(6, track ? [track, groups] : [])).toEqual(['yes', 6, 6, 6])
})

test('sit-outs of the programme belong to the round', () => {
  const rules = [...LANE_RULES.filter(({ kind }) => kind !== 'laneOrder'), order([])]
  const pressing = laneMeeting({
    rules,
    segment: (number) => (number % 4 === 0 ? { lane: 'sitOut' } : {}),
  })
  runSegments(pressing, 1, 6)
  // 1 2 3 out 5 6 7 out: six lanes are had after seven, and the eighth is sat out.
  expect(comparableAt(pressing.state(), greenOf(7) - MINUTE)).toMatchObject({ round: 8 })
})

test('on a digital track gaps always compare, and a standing says which it is', () => {
  expect(comparableAt(smallMeeting().state(), GREEN)).toMatchObject({ is: 'yes', round: 0 })
  const pressing = runSegments(laneMeeting({ rules: four, segments: 9 }), 1, 2)
  classify(pressing, greenOf(3) - MINUTE, { scope: 'whole', rows: ['Wren 20', 'Us 19'] })
  runSegments(pressing, 3, 4)
  expect(standing(pressing.state(), greenOf(5))?.comparable).toMatchObject({
    ...{ is: 'tooEarly', through: 2, round: 4 },
  })
})
