import { expect, test } from 'vitest'
import { ADA, BEN, running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { DriverModel } from './driver-model.svelte.ts'

function phoneOf(person: string | undefined, minutes: number) {
  const log = running()
  log.add(38, 'call.1', { person: ADA, words: 'Come in' })
  log.add(38, 'call.1', { person: BEN, words: 'Get ready' })
  const meeting = new PaperMeeting(log, minutes)
  meeting.role = 'crew'
  meeting.person = person
  return { meeting, model: new DriverModel(() => meeting) }
}

test('a phone that nobody holds asks who does', () => {
  const { model } = phoneOf(undefined, 38)
  expect(model.face).toBeUndefined()
  model.hold(ADA)
  expect(model.person?.name).toBe('Ada')
})

test('a driver has no hand to answer, anybody else has', () => {
  expect(phoneOf(ADA, 38.1).model.mayAnswer).toBe(false)
  const { meeting, model } = phoneOf(BEN, 38.1)
  expect(model.mayAnswer).toBe(true)
  model.heard()
  expect(meeting.last).toMatchObject({ kind: 'answer.1', body: { answer: 'heard' } })
  expect(model.call).toBeUndefined()
})

test('a call takes the lamp from the countdown', () => {
  const { model } = phoneOf(BEN, 38.1)
  expect(model.face?.urgency).toBe('soon')
  expect(model.lit).toBe(false)
  model.heard()
  expect(model.lit).toBe(true)
})
