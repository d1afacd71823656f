import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import {
  greenOf,
  LANE_RULES,
  laneMeeting,
  runSegments,
  type LaneMeeting,
} from '../testing/lane-meeting.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, SECOND } from '../testing/small-meeting.ts'
import { laneChange } from './lane-change.ts'

const { Solveig, Okello, Imre } = PEOPLE
const ENDED = GREEN + 20 * MINUTE
const NOW = ENDED + 96 * SECOND

function begun(lane = 1, of: LaneMeeting = {}, segments = 1): Pressing {
  const pressing = laneMeeting(of)
  pressing.press(GREEN - 30 * SECOND, 'startDrawn.1', { lane })
  return runSegments(pressing, 1, segments)
}

test('it is there from a segment’s end to the next green, and only then', () => {
  const pressing = laneMeeting({ segments: 2 })
  expect(laneChange(pressing.state(), GREEN - MINUTE)).toBeUndefined()
  pressing.press(GREEN, 'green.1', { segment: 's1' })
  expect(laneChange(pressing.state(), GREEN + MINUTE)).toBeUndefined()
  pressing.press(ENDED, 'segmentEnd.1', { segment: 's1' })
  expect(laneChange(pressing.state(), ENDED)).toMatchObject({ kind: 'laneChange', since: ENDED })
  runSegments(pressing, 2, 2)
  expect(laneChange(pressing.state(), GREEN + 45 * MINUTE)).toBeUndefined()
})

test('from lane to lane, who drives, at which post, who moves the car, where it restarts', () => {
  const also: readonly Rule[] = [
    { id: 'restart', kind: 'restart', value: { at: 'sameSection' } },
    {
      id: 'work',
      kind: 'workAllowed',
      value: { during: 'laneChange', allowed: true, costLaps: 8 },
    },
  ]
  const rules = LANE_RULES.map((rule): Rule =>
    rule.kind === 'laneChange' ? { ...rule, value: { ...rule.value, movedBy: 'judges' } } : rule,
  )
  const found = laneChange(begun(3, { rules, also }).state(), NOW)
  expect(found).toMatchObject({
    ...{ from: { lane: 3, colour: 'green' }, to: { lane: 5, colour: 'yellow' } },
    ...{ driver: Okello, posts: [{ person: Imre, post: '5' }] },
    ...{ movedBy: 'judges', restartAt: 'sameSection' },
    hands: { allowed: true, costLaps: 8 },
    before: { index: 0, of: 8 },
    next: { index: 1, of: 8 },
  })
})

test('two countdowns: not before, and when it is planned', () => {
  const found = laneChange(begun().state(), NOW)
  // It ended 1:36 ago: 3:00 − 1:36 = 1:24, and 5:00 − 1:36 = 3:24.
  expect(found?.earliest).toEqual({
    ...{ at: ENDED + 3 * MINUTE, lengthMs: 3 * MINUTE, toGoMs: 84 * SECOND },
  })
  expect(found?.planned).toEqual({
    ...{ at: ENDED + 5 * MINUTE, lengthMs: 5 * MINUTE, toGoMs: 204 * SECOND },
  })
})

test('the planned restart does not slide, and moves where race control moves it', () => {
  const pressing = begun()
  const late = ENDED + 6 * MINUTE
  expect(laneChange(pressing.state(), late)?.planned).toMatchObject({
    ...{ at: ENDED + 5 * MINUTE, toGoMs: -MINUTE },
  })
  pressing.press(late, 'programmeMoved.1', { fromItem: 's2', byMs: 10 * MINUTE })
  expect(laneChange(pressing.state(), late)?.planned).toMatchObject({
    ...{ at: ENDED + 15 * MINUTE, lengthMs: 15 * MINUTE, toGoMs: 9 * MINUTE },
  })
})

test('without an earliest restart there is one countdown', () => {
  const rules = LANE_RULES.filter(({ kind }) => kind !== 'laneChange')
  const found = laneChange(begun(1, { rules }).state(), NOW)
  expect(found).not.toHaveProperty('earliest')
  expect(found?.movedBy).toBe('notKnown')
})

test('moves stand in their order, those made first', () => {
  const pressing = begun(1, { segments: 2 })
  const moves = (at: number) =>
    laneChange(pressing.state(), at)?.moves.map(({ move, done }) => [
      ...[move.person, move.duty, move.post, done],
    ])
  // Lane 1 to lane 3: Imre to post 3, then Okello drives and Solveig is off.
  expect(moves(NOW)).toEqual([
    [Imre, 'post', '3', false],
    [Okello, 'controller', undefined, false],
    [Solveig, 'offDuty', undefined, false],
  ])
  pressing.press(NOW, 'dutyTaken.1', { person: Imre, duty: 'post', post: '3' })
  expect(moves(NOW + SECOND)).toEqual([
    [Imre, 'post', '3', true],
    [Okello, 'controller', undefined, false],
    [Solveig, 'offDuty', undefined, false],
  ])
  pressing.press(NOW + SECOND, 'handover.1', {
    moves: [
      { person: Okello, duty: 'controller' },
      { person: Solveig, duty: 'offDuty' },
    ],
  })
  expect(moves(NOW + 2 * SECOND)?.map(([person, , , done]) => [person, done])).toEqual([
    [Imre, true],
    [Okello, true],
    [Solveig, true],
  ])
})

test('what is tried before green is ticked since the segment ended', () => {
  const pressing = laneMeeting({ segments: 3 })
  const tick = (at: number, work: string) => {
    pressing.press(at, 'workTicked.1', { work, done: true })
  }
  runSegments(pressing, 1, 1)
  tick(ENDED + SECOND, 'Controller plugged in')
  runSegments(pressing, 2, 2)
  const second = greenOf(2) + 20 * MINUTE
  tick(second + SECOND, 'Power tested')
  expect(laneChange(pressing.state(), second + MINUTE)?.work).toEqual([
    { work: 'Controller plugged in', done: false },
    { work: 'Power tested', done: true },
  ])
})

test('before a sit-out it says what that obliges to, and there is nothing to plug in', () => {
  const also: readonly Rule[] = [
    { id: 'duty', kind: 'sitOutDuty', value: { obliges: 'marshalSomePosts', posts: 2 } },
  ]
  const found = laneChange(begun(5, { also }).state(), NOW)
  expect(found).toMatchObject({
    ...{ from: { lane: 5 }, to: 'sitOut', work: [] },
    sitOut: { obliges: 'marshalSomePosts', posts: 2 },
  })
  expect(found).not.toHaveProperty('driver')
})

test('a break is one too where the race has lanes, and is none on a digital track', () => {
  const lanes = laneMeeting({ segments: 2, segment: (number) => ({ lane: number }) })
  const breaks = (pressing: Pressing) => {
    runSegments(pressing, 1, 1)
    const state = pressing.state()
    const rules = state.documents.rules.map((one) => ({
      ...one,
      content: {
        ...one.content,
        programme: one.content.programme.map((item) =>
          item.kind === 'laneChange' ? { ...item, kind: 'break' as const } : item,
        ),
      },
    }))
    return laneChange({ ...state, documents: { ...state.documents, rules } }, NOW)
  }
  expect(breaks(lanes)).toMatchObject({ kind: 'break', from: { lane: 1 }, to: { lane: 2 } })
  const digital = laneMeeting({ segments: 2, rules: [], segment: () => ({ lane: undefined }) })
  expect(breaks(digital)).toBeUndefined()
})
