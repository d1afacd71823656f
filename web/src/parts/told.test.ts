import { expect, test } from 'vitest'
import { firstOver, onLanes } from '../screens/fixture/lanes-on-paper.ts'
import { ADA, BEN, CHO, MINUTE, START } from '../screens/fixture/paper-log.ts'
import { PaperMeeting } from '../screens/fixture/paper-meeting.svelte.ts'
import { toldTo, unheardOf, without } from './told.ts'

/** What a person is told who has heard of everything up to then. */
function told(meeting: PaperMeeting, person: string, since: number) {
  const { state, now } = meeting
  const unheard = unheardOf(state, { since, heard: [] })
  const before = without(state, unheard)
  return toldTo(person, { before, after: state, now }).map(({ sentence }) => sentence)
}

test('a programme that slips is told to whom it moves', () => {
  const meeting = new PaperMeeting(firstOver(), 21)
  const since = meeting.now
  meeting.press('programmeMoved.1', { fromItem: 's2', byMs: 10 * MINUTE })
  expect(told(meeting, BEN, since)).toEqual([
    'Your stint in Segment 2 begins 0:10 later.',
    'Your stint in Segment 4 begins 0:10 later.',
  ])
  // Segment 3 is sat out.
  expect(told(meeting, ADA, since)).toEqual([])
})

test('what is taken back before anybody heard it is not told at all', () => {
  const meeting = new PaperMeeting(firstOver(), 21)
  const since = meeting.now
  meeting.press('programmeMoved.1', { fromItem: 's2', byMs: 10 * MINUTE })
  meeting.undo()
  expect(unheardOf(meeting.state, { since, heard: [] })).toHaveLength(2)
  expect(told(meeting, BEN, since)).toEqual([])
})

test('what was heard, and what was there before, is not told again', () => {
  const meeting = new PaperMeeting(firstOver(), 21)
  const moved = meeting.press('programmeMoved.1', { fromItem: 's2', byMs: 10 * MINUTE })
  const heard = [moved]
  expect(unheardOf(meeting.state, { since: START, heard })).toEqual([])
  expect(unheardOf(meeting.state, { since: meeting.now + 1, heard: [] })).toEqual([])
})

test('a draw tells drivers their lanes and marshals their posts', () => {
  const meeting = new PaperMeeting(onLanes(), -5)
  const since = meeting.now
  meeting.press('startDrawn.1', { lane: 2 })
  // 2 1 3 out: Ada drives the first and third, Ben the second; the fourth falls away.
  expect(told(meeting, ADA, since)).toEqual([
    'Your stint in Segment 1 is on lane 2, white.',
    'Your stint in Segment 3 is on lane 3, green.',
  ])
  expect(told(meeting, CHO, since)[0]).toBe('Your post in Segment 1 is at post 2.')
})
