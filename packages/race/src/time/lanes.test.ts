import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { laneMeeting, LANE_RULES, type LaneMeeting } from '../testing/lane-meeting.ts'
import { GREEN, problemKinds, type Pressing } from '../testing/pressing.ts'
import { MINUTE } from '../testing/small-meeting.ts'
import { lanesOf, type SegmentLane } from './lanes.ts'

const DRAWN = GREEN - 30_000
const short = (lane: SegmentLane | undefined) =>
  typeof lane === 'object' ? (lane.track === undefined ? lane.lane : [lane.track, lane.lane]) : lane
const lanes = (pressing: Pressing) => [...lanesOf(pressing.state(), GREEN).values()].map(short)
const begun = (lane: number | null, of?: LaneMeeting) => {
  const pressing = laneMeeting(of)
  pressing.press(DRAWN, 'startDrawn.1', { lane })
  return pressing
}
const without = (kind: Rule['kind']) => LANE_RULES.filter((rule) => rule.kind !== kind)

test('L45: one starting lane says which lane every segment has', () => {
  // The round is 1 3 5 out 6 4 2 out.
  expect(lanes(begun(1))).toEqual([1, 3, 5, 'sitOut', 6, 4, 2, 'sitOut'])
  expect(lanes(begun(4))).toEqual([4, 2, 'sitOut', 1, 3, 5, 'sitOut', 6])
})

test('L45: a team may begin with a sit-out, and the draw says with which', () => {
  const second = laneMeeting()
  second.press(DRAWN, 'startDrawn.1', { lane: null, sitOut: 2 })
  expect(lanes(begun(null))).toEqual(['sitOut', 6, 4, 2, 'sitOut', 1, 3, 5])
  expect(lanes(second)).toEqual(['sitOut', 1, 3, 5, 'sitOut', 6, 4, 2])
})

test('L45: the last start counts from its segment on, and takes the place of what was drawn for segments there', () => {
  const pressing = begun(1)
  pressing.press(DRAWN + 1_000, 'laneDrawn.1', { segment: 's2', lane: 4 })
  pressing.press(DRAWN + 2_000, 'laneDrawn.1', { segment: 's6', lane: null })
  expect(lanes(pressing)).toEqual([1, 4, 5, 'sitOut', 6, 'sitOut', 2, 'sitOut'])
  pressing.press(DRAWN + 20_000, 'startDrawn.1', { lane: 2, segment: 's5' })
  // From the fifth on: 2 out 1 3.
  expect(lanes(pressing)).toEqual([1, 4, 5, 'sitOut', 2, 'sitOut', 1, 3])
  pressing.press(DRAWN + 40_000, 'startDrawn.1', { lane: 3 })
  expect(lanes(pressing)).toEqual([3, 5, 'sitOut', 6, 4, 2, 'sitOut', 1])
})

test('L45: a start from a segment that is gone is listed and says nothing', () => {
  const pressing = begun(1)
  pressing.press(DRAWN + 1_000, 'startDrawn.1', { lane: 2, segment: 's99' })
  expect(problemKinds(pressing.state())).toEqual(['outOfPlace'])
  expect(lanes(pressing)).toEqual([1, 3, 5, 'sitOut', 6, 4, 2, 'sitOut'])
})

test('before the draw the programme counts, and sit-outs it fixes stay where they are', () => {
  const fixed: LaneMeeting = {
    rules: [
      ...without('laneOrder'),
      { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown' } },
    ],
    segment: (number) => (number % 4 === 0 ? { lane: 'sitOut' } : {}),
  }
  const open = 'notDrawnYet'
  expect(lanes(laneMeeting(fixed))).toEqual([
    ...[open, open, open, 'sitOut', open, open, open, 'sitOut'],
  ])
  // 1 3 5 of six, one out, 6 4 2, one out.
  expect(lanes(begun(1, fixed))).toEqual([1, 3, 5, 'sitOut', 6, 4, 2, 'sitOut'])
})

test('groups take turns, and lanes move on with each turn', () => {
  const order: Rule = { id: 'order', kind: 'laneOrder', value: { moves: 'groups', groups: 2 } }
  const pressing = laneMeeting({ rules: [...without('laneOrder'), order], segments: 6 })
  pressing.press(DRAWN, 'startDrawn.1', { lane: 3, group: 2 })
  expect(lanes(pressing)).toEqual(['sitOut', 3, 'sitOut', 5, 'sitOut', 6])
  const unsaid = laneMeeting({ rules: [...without('laneOrder'), order], segments: 2 })
  unsaid.press(DRAWN, 'startDrawn.1', { lane: 3 })
  expect(lanes(unsaid)).toEqual(['notDrawnYet', 'notDrawnYet'])
})

test('lanes carry the colour of the hall, and their track where there are several', () => {
  expect(lanesOf(begun(5).state(), GREEN).get('s1')).toEqual({ lane: 5, colour: 'yellow' })
  const two: Rule = { id: 'track', kind: 'tracks', value: { tracks: 2, lanes: 4 } }
  const order: Rule = { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown' } }
  // From 4 of the first track: 4 2, then 1 3 4 2 of the second.
  expect(lanes(begun(4, { rules: [two, order], segments: 6 }))).toEqual([
    ...[
      [1, 4],
      [1, 2],
      [2, 1],
      [2, 3],
      [2, 4],
      [2, 2],
    ],
  ])
})

test('without an order only the first lane is known', () => {
  const pressing = begun(4, { rules: without('laneOrder'), segments: 3 })
  expect(lanes(pressing)).toEqual([4, 'notDrawnYet', 'notDrawnYet'])
})

test('a digital programme has no lanes', () => {
  const pressing = laneMeeting({ rules: [], segment: () => ({ lane: undefined }) })
  expect(lanes(pressing)).toEqual([])
})

test('L45: wherever a team begins, a round brings it to every lane and every sit-out once', () => {
  const start = fc.record({
    lanes: fc.integer({ min: 2, max: 10 }),
    from: fc.nat(),
    sitOuts: fc.array(fc.nat(), { maxLength: 3 }),
  })
  fc.assert(
    fc.property(start, ({ lanes: count, from, sitOuts }) => {
      const sitOutsAfter = sitOuts.map((one) => (one % count) + 1)
      const rules: Rule[] = [
        { id: 'track', kind: 'tracks', value: { tracks: 1, lanes: count } },
        { id: 'order', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter } },
      ]
      const segments = count + sitOuts.length
      const had = lanes(begun((from % count) + 1, { rules, segments }))
      const numbers = had.filter((lane) => lane !== 'sitOut')
      expect([...numbers].sort((a, b) => Number(a) - Number(b))).toEqual(
        Array.from({ length: count }, (_, place) => place + 1),
      )
    }),
    { numRuns: 50 },
  )
})

test('a lane drawn later does not change what was before it', () => {
  const pressing = begun(1)
  const before = lanes(pressing).slice(0, 3)
  pressing.press(GREEN + MINUTE, 'startDrawn.1', { lane: 6, segment: 's4' })
  expect(lanes(pressing).slice(0, 3)).toEqual(before)
  expect(lanes(pressing).slice(3)).toEqual([6, 4, 2, 'sitOut', 1])
})
