import { expect, test } from 'vitest'
import { dutiesNow } from '../clocks/duties.ts'
import { stintClock } from '../clocks/stint-clock.ts'
import { PEOPLE } from '../testing/ids.ts'
import { greenOf, laneMeeting, lanePlan, runSegments, SEGMENT_MS } from '../testing/lane-meeting.ts'
import { GREEN } from '../testing/pressing.ts'
import { raceTimeline } from '../timeline/timeline.ts'
import { lappingMs } from './lapping.ts'
import { planInForce } from './plan-in-force.ts'

const NOW = GREEN - 10_000

test('L46: a post tied to the lane follows the draw, and nobody drives in a sit-out', () => {
  const pressing = laneMeeting({ segments: 4 })
  expect(planInForce(pressing.state(), NOW)).toEqual(lanePlan(4))
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 1 })
  // 1 3 5 out: Okello's stint in the fourth falls away; in a sit-out the post stays as it was.
  const spans = planInForce(pressing.state(), NOW)?.spans.map(({ id, post }) => [id, post])
  expect(spans).toEqual([
    ['d1', undefined],
    ['m1', '1'],
    ['d2', undefined],
    ['m2', '3'],
    ['d3', undefined],
    ['m3', '5'],
    ['m4', undefined],
  ])
})

test('L46: at green whoever the plan has at a post is taken to be at that of the lane', () => {
  const pressing = laneMeeting({ segments: 2 })
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 3 })
  pressing.press(GREEN, 'green.1', { segment: 's1' })
  expect(pressing.state().people.duties).toMatchObject([
    { person: PEOPLE.Solveig, duty: 'controller' },
    { person: PEOPLE.Imre, duty: 'post', post: '3', assumed: true },
  ])
})

test('a post with a name of its own stays, and so do two people at different posts at once', () => {
  const plan = lanePlan(2)
  const whole = { duty: 'post', fromMs: 0, toMs: SEGMENT_MS } as const
  const pressing = laneMeeting({
    segments: 2,
    plan: {
      ...plan,
      spans: [
        { id: 'named', person: PEOPLE.Imre, segment: 's1', post: 'Start line', ...whole },
        { id: 'one', person: PEOPLE.Imre, segment: 's2', post: '1', ...whole },
        { id: 'other', person: PEOPLE.Tamsin, segment: 's2', post: '2', ...whole },
      ],
    },
  })
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 4 })
  const posts = planInForce(pressing.state(), NOW)?.spans.map(({ post }) => post)
  expect(posts).toEqual(['Start line', '1', '2'])
})

test('where the rules do not tie it the post stays', () => {
  const pressing = laneMeeting({
    segments: 1,
    rules: [{ id: 'post', kind: 'postByLane', value: { tied: 'notKnownYet' } }],
  })
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 4 })
  expect(planInForce(pressing.state(), NOW)).toEqual(lanePlan(1))
})

test('L46: in a segment sat out the car does not run', () => {
  const ran = (lane: number | null) => {
    const pressing = laneMeeting({ segments: 1 })
    pressing.press(GREEN - 30_000, 'startDrawn.1', { lane })
    pressing.press(GREEN, 'green.1', { segment: 's1' })
    return lappingMs(pressing.state(), { fromAt: GREEN, toAt: GREEN + 60_000 })
  }
  expect([ran(3), ran(null)]).toEqual([60_000, 0])
})

test('L46: whoever was left at the controller does not drive through a sit-out', () => {
  const pressing = laneMeeting({ segments: 2 })
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 5 })
  // Lane 5, then one sat out.
  runSegments(pressing, 1, 1)
  pressing.press(greenOf(2), 'green.1', { segment: 's2' })
  const now = greenOf(2) + 60_000
  const state = pressing.state()
  expect(dutiesNow(state).map(({ person, duty }) => [person, duty])).toEqual([
    [PEOPLE.Imre, 'post'],
  ])
  const drove = raceTimeline(state, now).spans.filter(({ duty }) => duty === 'controller')
  expect(drove.map(({ person, segment }) => [person, segment])).toEqual([[PEOPLE.Solveig, 's1']])
  expect(stintClock(state, now)).toBeUndefined()
})
