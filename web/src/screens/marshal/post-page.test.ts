import { expect, test } from 'vitest'
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
  expect(page(BEN, 20, running('plan'))).toEqual({ onPost: true, where: 'Post 4', near: false })
})

test('somebody who holds no post sees what they do', () => {
  expect(page(ADA, 20)).toMatchObject({ onPost: false, where: 'At the controller' })
  expect(page(CHO, 20)).toMatchObject({ where: 'Off duty', next: 'post 4, about 11:40' })
})
