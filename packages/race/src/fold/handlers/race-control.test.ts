import { expect, test } from 'vitest'
import { DEVICES, id } from '../../testing/ids.ts'
import { GREEN, problemKinds } from '../../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../../testing/small-meeting.ts'

const drive = { what: 'driveThrough', scope: 'race' } as const

test('a penalty is served or withdrawn once', () => {
  const pressing = smallMeeting()
  const served = pressing.press(GREEN, 'penalty.1', drive)
  const withdrawn = pressing.press(GREEN + MINUTE, 'penalty.1', { ...drive, what: 'warning' })
  pressing.press(GREEN + 2 * MINUTE, 'penaltyServed.1', { penalty: served })
  pressing.press(GREEN + 3 * MINUTE, 'penaltyWithdrawn.1', { penalty: withdrawn })
  pressing.press(GREEN + 4 * MINUTE, 'penaltyServed.1', { penalty: withdrawn })
  pressing.press(GREEN + 5 * MINUTE, 'penaltyServed.1', { penalty: id(99) })
  const state = pressing.state()
  expect(state.raceControl.penalties).toMatchObject([
    { entry: served, servedAt: GREEN + 2 * MINUTE },
    { entry: withdrawn, withdrawnAt: GREEN + 3 * MINUTE },
  ])
  expect(problemKinds(state)).toEqual(['alreadySo', 'outOfPlace'])
})

test('L14: a penalty that two heard is served by naming either', () => {
  const pressing = smallMeeting()
  const held = pressing.press(GREEN, 'penalty.1', drive)
  const witness = pressing.by({ device: DEVICES.otherWall }).press(GREEN + 1, 'penalty.1', drive)
  pressing.press(GREEN + MINUTE, 'penaltyServed.1', { penalty: witness })
  const state = pressing.state()
  expect(state.raceControl.penalties).toMatchObject([{ entry: held, servedAt: GREEN + MINUTE }])
  expect(state.problems).toEqual([])
})

test('of a lane drawn twice the last counts, and a sit-out is no lane', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'laneDrawn.1', { segment: 'one', lane: 3 })
  pressing.press(GREEN + MINUTE, 'laneDrawn.1', { segment: 'one', lane: 5 })
  pressing.press(GREEN + MINUTE, 'laneDrawn.1', { segment: 'two', lane: null })
  expect(pressing.state().raceControl.lanes).toEqual({ one: 5, two: null })
})

test('L13: a programme moved by two tablets moves once', () => {
  const pressing = smallMeeting()
  const moved = { fromItem: 'two', byMs: 5 * MINUTE }
  pressing.press(GREEN, 'programmeMoved.1', moved)
  pressing.by({ device: DEVICES.otherWall }).press(GREEN + 4_000, 'programmeMoved.1', moved)
  expect(pressing.state().raceControl.moves).toHaveLength(1)
})

test('the car is released once', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'released.1', {})
  pressing.press(GREEN + MINUTE, 'released.1', {})
  const state = pressing.state()
  expect(state.raceControl.releasedAt).toBe(GREEN)
  expect(problemKinds(state)).toEqual(['alreadySo'])
})
