import { expect, test } from 'vitest'
import { PEOPLE } from '../testing/ids.ts'
import { stintClock } from '../clocks/stint-clock.ts'
import { greenOf, laneMeeting, runSegments } from '../testing/lane-meeting.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, policy, smallMeeting } from '../testing/small-meeting.ts'
import { planTimeline, raceTimeline, type TimelineSpan } from './timeline.ts'

const drivers = (spans: readonly TimelineSpan[]) =>
  spans
    .filter((span) => span.duty === 'controller')
    .map(({ person, fromMs, toMs, fromAt, toAt }) => [
      ...[person, fromMs / MINUTE, toMs / MINUTE],
      ...[(fromAt - GREEN) / MINUTE, (toAt - GREEN) / MINUTE],
    ])

const { Solveig, Okello } = PEOPLE

test('the plan lies where the race clock has it, as far as the race has come', () => {
  const pressing = smallMeeting({ rules: [policy('segment', 'holds')] })
  expect(drivers(planTimeline(pressing.state(), GREEN).spans)).toEqual([
    [Solveig, 0, 10, 0, 10],
    [Okello, 10, 20, 10, 20],
  ])
  pressing.press(GREEN + MINUTE, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 3 * MINUTE, 'trackCall.1', {})
  pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
  // A minute late and two minutes of call: 10:00 on the clock is at 13, 20:00 at 23.
  expect(drivers(planTimeline(pressing.state(), GREEN + 6 * MINUTE).spans)).toEqual([
    [Solveig, 0, 10, 1, 13],
    [Okello, 10, 20, 13, 23],
  ])
})

test('the race so far is cut by its segments and ends now', () => {
  const pressing = smallMeeting({ rules: [policy('segment', 'holds')] })
  const moves = [{ person: Okello, duty: 'controller' as const }]
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 8 * MINUTE, 'handover.1', { moves })
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  pressing.press(GREEN + 30 * MINUTE, 'green.1', { segment: 'two' })
  expect(drivers(raceTimeline(pressing.state(), GREEN + 33 * MINUTE).spans)).toEqual([
    [Solveig, 0, 8, 0, 8],
    [Okello, 8, 20, 8, 20],
    [Okello, 0, 3, 30, 33],
  ])
})

test('posts are named and ids are unique', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const spans = raceTimeline(pressing.state(), GREEN + MINUTE).spans
  expect(spans.find((span) => span.duty === 'post')).toMatchObject({ post: '4' })
  expect(new Set(spans.map((span) => span.id)).size).toBe(3)
})

test('L46: whoever still has the controller does not drive in a segment sat out', () => {
  const pressing = laneMeeting({ segments: 3, plan: null })
  const moves = [{ person: Okello, duty: 'controller' as const }]
  pressing.press(GREEN - MINUTE, 'handover.1', { moves })
  pressing.press(GREEN - MINUTE, 'startDrawn.1', { lane: 2 })
  runSegments(pressing, 1, 1)
  pressing.press(greenOf(2), 'green.1', { segment: 's2' })
  // Lane 2, and then a sit-out from 25 on.
  const now = greenOf(2) + 5 * MINUTE
  expect(drivers(raceTimeline(pressing.state(), now).spans)).toEqual([[Okello, 0, 20, 0, 20]])
  expect(stintClock(pressing.state(), now)).toBeUndefined()
})
