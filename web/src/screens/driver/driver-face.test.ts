import { expect, test } from 'vitest'
import { firstOver, onLanes } from '../fixture/lanes-on-paper.ts'
import { ADA, BEN, CHO, running, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { driverFace } from './driver-face.ts'
import { callFor } from './own-call.ts'

function face(person: string, minutes: number, log: PaperLog = running()) {
  const { state, now } = new PaperMeeting(log, minutes)
  return driverFace({ state, now, person, timeZone: 'UTC' })
}

test('who drives sees what is left, the next stop, and what comes then', () => {
  expect(face(ADA, 33.8)).toMatchObject({
    driving: true,
    duty: 'driving',
    label: 'Left in this stint',
    big: '06:12',
    urgency: 'calm',
    lines: [
      { lead: 'Next stop', when: 'about 11:40' },
      { lead: 'Then', what: 'off duty', when: 'about 11:40' },
      { lead: 'Next', what: 'post 4', when: 'about 12:20' },
      { lead: 'You drive again', when: 'about 13:10' },
    ],
  })
})

test('a duty that follows at once is what comes then', () => {
  // Ben's turn ends at 80 min with a rest; Cho's turn at the controller begins then.
  const log = running()
  log.add(41, 'handover.1', {
    moves: [
      { person: CHO, duty: 'post', post: '4' },
      { person: BEN, duty: 'controller' },
    ],
  })
  expect(face(CHO, 60, log)).toMatchObject({
    label: 'You drive in',
    lines: [{ lead: 'By the clock', what: '' }],
  })
  expect(face(BEN, 60, log).lines.map(({ lead }) => lead)).toEqual([
    'Next stop',
    'Then',
    'Next',
    'You drive again',
  ])
})

test('on fixed lanes the lane comes first: of the segment that runs, or of the next stint', () => {
  const log = onLanes()
  log.add(-10, 'startDrawn.1', { lane: 1 })
  log.add(0, 'handover.1', { moves: [{ person: ADA, duty: 'controller' }] })
  log.add(0, 'green.1', { segment: 's1' })
  expect(face(ADA, 5, log).lines[0]).toMatchObject({ lead: 'Lane', what: '1, red' })
  // 1, then 3.
  expect(face(BEN, 21, firstOver()).lines[0]).toMatchObject({ lead: 'Lane', what: '3, green' })
})

test('above an hour the seconds are set smaller', () => {
  // Without a plan the stint lasts to the segment’s end: 120 − 30 = 90 min.
  expect(face(ADA, 30, running('plan'))).toMatchObject({ big: '1:30', tail: '00' })
})

test('over the plan it counts up', () => {
  expect(face(ADA, 42.5)).toMatchObject({ label: 'Over by', big: '2:30', left: 0, urgency: 'now' })
})

test('who does not drive counts down to the next duty', () => {
  expect(face(BEN, 38)).toMatchObject({
    driving: false,
    duty: 'post 4',
    label: 'You drive in',
    big: '2:00',
    urgency: 'soon',
  })
  expect(face(CHO, 10)).toMatchObject({ duty: 'off duty', label: 'Post 4 in', big: '30:00' })
})

test('a call stays until somebody answers it, and a later one takes its place', () => {
  const log = running()
  log.add(20, 'call.1', { person: ADA, words: 'Stay out' })
  const call = log.add(21, 'call.1', { person: ADA, words: 'Come in' })
  const words = () => {
    const { state, now } = new PaperMeeting(log, 22)
    return callFor(state, ADA, now)?.words
  }
  expect(words()).toBe('Come in')
  log.add(21.5, 'answer.1', { call, answer: 'heard' })
  expect(words()).toBeUndefined()
})
