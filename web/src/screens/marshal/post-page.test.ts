import { expect, test } from 'vitest'
import { onLanes } from '../fixture/lanes-on-paper.ts'
import { ADA, BEN, CHO, running, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { postPage } from './post-page.ts'

const NAMES = new Map([
  [ADA, 'Ada'],
  [BEN, 'Ben'],
  [CHO, 'Cho'],
])

function page(person: string, minutes: number, log: PaperLog = running()) {
  const { state, now } = new PaperMeeting(log, minutes)
  const nameOf = (id: string) => NAMES.get(id) ?? ''
  return postPage({ state, now, person, timeZone: 'UTC', nameOf })
}

test('a marshal sees the post, until when, and who relieves them', () => {
  expect(page(BEN, 20)).toEqual({
    onPost: true,
    where: 'Post 4',
    until: '11:40',
    relief: 'Cho',
    near: false,
    next: 'you drive, about 11:40',
    // Cho's turn at the post, and Ben's own at the controller.
    told: ['nextDuty:s1d1', 'relief:s1m1'],
  })
})

test('nothing on the page changes between facts', () => {
  expect(page(BEN, 25)).toEqual(page(BEN, 20))
})

test('the page turns two minutes before the relief and stays so until it comes', () => {
  expect(page(BEN, 37.9).near).toBe(false)
  expect(page(BEN, 38).near).toBe(true)
  expect(page(BEN, 41)).toMatchObject({ near: true, until: '11:40', relief: 'Cho' })
})

test('a post nobody planned has no end', () => {
  expect(page(BEN, 20, running('plan'))).toEqual({
    ...{ onPost: true, where: 'Post 4', near: false, told: [] },
  })
})

test('somebody who holds no post sees what they do', () => {
  expect(page(ADA, 20)).toMatchObject({ onPost: false, where: 'At the controller' })
  expect(page(CHO, 20)).toMatchObject({ where: 'Off duty', next: 'post 4, about 11:40' })
})

test('on fixed lanes the page says where our car runs, and the post is that of the lane', () => {
  const log = onLanes()
  log.add(-10, 'startDrawn.1', { lane: 1 })
  log.add(0, 'handover.1', { moves: [{ person: ADA, duty: 'controller' }] })
  log.add(0, 'green.1', { segment: 's1' })
  expect(page(CHO, 5, log).lane).toBe('lane 1, red')
  // Off duty: what comes is the post of lane 3, five minutes after the segment's twenty.
  log.add(6, 'handover.1', { moves: [{ person: CHO, duty: 'offDuty' }] })
  log.add(20, 'segmentEnd.1', { segment: 's1' })
  expect(page(CHO, 21, log)).toMatchObject({ where: 'Off duty', next: 'post 3, about 11:25' })
})
