import { lanesOf } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { laneWords } from '../../parts/lane-words.ts'
import { firstOver, onLanes } from '../fixture/lanes-on-paper.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { laneChoice, startDrawn } from './draw.ts'
import { lanesToCome } from './lanes.ts'

function lanes({ state, now }: PaperMeeting): readonly string[] {
  return [...lanesOf(state, now).values()].map(laneWords)
}

test('the starting lane is one press, and all that come after follow', () => {
  const meeting = new PaperMeeting(onLanes(), -5)
  const { start } = laneChoice(meeting.state, meeting.now)
  expect(start?.label).toBe('We begin on')
  expect(start?.tiles).toEqual([
    { id: '1', word: 'Lane 1', hint: 'red' },
    { id: '2', word: 'Lane 2', hint: 'white' },
    { id: '3', word: 'Lane 3', hint: 'green' },
    { id: 'sitOut 1', word: 'Sit-out' },
  ])
  expect(lanesToCome(meeting.state, meeting.now)).toBe('Lanes to come: not drawn yet')
  const press = startDrawn(meeting.state, meeting.now, { choice: '3' })
  expect(press).toMatchObject({ kind: 'startDrawn.1', body: { lane: 3 }, word: 'Start on lane 3' })
  meeting.press('startDrawn.1', { lane: 3 })
  // 1 3 out 2, from 3 on.
  expect(lanes(meeting)).toEqual(['lane 3, green', 'sit-out', 'lane 2, white', 'lane 1, red'])
  expect(lanesToCome(meeting.state, meeting.now)).toBe(
    'Lanes to come: lane 3, sit-out, lane 2, lane 1',
  )
})

test('a sit-out may come first', () => {
  const meeting = new PaperMeeting(onLanes(), -5)
  const press = startDrawn(meeting.state, meeting.now, { choice: 'sitOut 1' })
  expect(press.body).toEqual({ lane: null, sitOut: 1 })
  meeting.press('startDrawn.1', { lane: null, sitOut: 1 })
  expect(lanes(meeting)).toEqual(['sit-out', 'lane 2, white', 'lane 1, red', 'lane 3, green'])
})

test('once a segment has run a draw speaks for what comes', () => {
  const meeting = new PaperMeeting(firstOver(), 21)
  expect(laneChoice(meeting.state, meeting.now).start?.label).toBe('From Segment 2 on')
  expect(startDrawn(meeting.state, meeting.now, { choice: '2' }).body).toEqual({
    lane: 2,
    segment: 's2',
  })
})

test('of several groups ours is asked first', () => {
  const groups = { moves: 'groups', groups: 2 } as const
  const meeting = new PaperMeeting(onLanes({ id: 'order', kind: 'laneOrder', value: groups }), -5)
  const { start } = laneChoice(meeting.state, meeting.now)
  expect(start?.groups.map(({ word }) => word)).toEqual(['Group 1', 'Group 2'])
  expect(start?.tiles.map(({ word }) => word)).toEqual(['Lane 1', 'Lane 2', 'Lane 3'])
  const said = startDrawn(meeting.state, meeting.now, { choice: '2', group: '2' })
  expect(said.body).toEqual({ lane: 2, group: 2 })
})

test('while it runs the lane we are on stands first', () => {
  const meeting = new PaperMeeting(firstOver(), 10)
  meeting.at(25)
  meeting.press('green.1', { segment: 's2' })
  expect(lanesToCome(meeting.state, meeting.now)).toBe(
    'Lane 3, green. Lanes to come: sit-out, lane 2',
  )
})
