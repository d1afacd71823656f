import { expect, test } from 'vitest'
import { ADA, BEN, CHO, prepared, running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { WallModel } from './wall-model.svelte.ts'

function wall(log: ConstructorParameters<typeof PaperMeeting>[0], minutes: number) {
  const meeting = new PaperMeeting(log, minutes)
  return { meeting, model: new WallModel(() => meeting) }
}

test('the stint counts down to its planned end', () => {
  // Planned end 40 min after green; at 33 min 48 s there are 6 min 12 s left of 40: 372 / 2400 = 0.155.
  const { model } = wall(running(), 33.8)
  expect(model.stint).toMatchObject({
    name: 'Ada',
    figure: '06:12',
    label: 'left in this stint',
    plannedEnd: 'planned end 11:40',
    urgency: 'calm',
  })
  expect(model.stint.left).toBeCloseTo(0.155, 3)
})

test('a stint over its plan counts up and is now', () => {
  const { model } = wall(running(), 42.5)
  expect(model.stint).toMatchObject({ figure: '+2:30', label: 'over the plan', urgency: 'now' })
})

test('a stint without a plan lasts to the end of its segment', () => {
  // 120 − 30 = 90 minutes.
  const { model } = wall(running('plan'), 30)
  expect(model.stint).toMatchObject({ figure: '1:30:00', plannedEnd: 'planned end 13:00' })
})

test('while the clock stands the stint stands', () => {
  const log = running()
  log.add(30, 'trackCall.1', {})
  const { model } = wall(log, 31)
  expect(model.stint).toMatchObject({ figure: '10:00', held: true })
  expect(model.head).toMatchObject({ shape: 'powerOff', power: 'Power off', held: true })
})

test('one thing has the lamp: the stop that ends the stint, not the stint', () => {
  const { model } = wall(running(), 38)
  expect(model.card).toMatchObject({ id: 'plannedStop:s1p1', urgency: 'soon', lit: true })
  expect(model.stint).toMatchObject({ urgency: 'soon', lit: false })
})

test('an open fault has the lamp only while nothing is soon', () => {
  const log = running()
  log.add(10, 'faultNoted.1', { fault: 'Braid' })
  const { meeting, model } = wall(log, 20)
  expect(model.faults).toMatchObject([{ name: 'Braid', runningWith: '10:00', lit: true }])
  meeting.at(38)
  expect(model.faults[0]?.lit).toBe(false)
})

test('a fault under repair waits for nobody', () => {
  const log = running()
  const fault = log.add(10, 'faultNoted.1', { fault: 'Braid' })
  log.add(19.5, 'repairStarted.1', { fault })
  const { model } = wall(log, 20)
  expect(model.faults).toMatchObject([{ repair: '0:30', repairing: true, lit: false }])
})

test('Fault stamps the time at once, a tile names it afterwards', () => {
  const { meeting, model } = wall(running(), 20)
  model.press('fault', 3)
  expect(model.sheet).toBe('fault')
  expect(model.faults).toMatchObject([{ noted: '11:20', unnamed: true }])
  meeting.at(20.1)
  model.nameFault('Splitter')
  expect(model.sheet).toBeUndefined()
  expect(model.faults).toMatchObject([{ name: 'Splitter', noted: '11:20', unnamed: false }])
})

test('Change opens with the planned people in a doable order', () => {
  const { meeting, model } = wall(running(), 39)
  expect(model.plannedMoves).toEqual([
    { person: CHO, duty: 'post', post: '4' },
    { person: BEN, duty: 'controller' },
    { person: ADA, duty: 'offDuty' },
  ])
  expect(model.handover).toEqual({
    when: 'About 11:40, in this order',
    steps: ['Cho to post 4', 'Ben drives', 'Ada off duty'],
  })
  model.press('change', 1)
  model.change(model.plannedMoves)
  expect(meeting.last).toMatchObject({ kind: 'handover.1' })
  expect(model.stint.name).toBe('Ben')
})

test('Car in serves the planned stop that is near, and none that is not', () => {
  const near = wall(running(), 39)
  near.model.press('carIn', 0)
  expect(near.meeting.last).toEqual({
    kind: 'stopIn.1',
    body: { moment: 'stopped', planned: 's1p1' },
  })
  const far = wall(running(), 10)
  far.model.press('carIn', 0)
  expect(far.meeting.last).toEqual({ kind: 'stopIn.1', body: { moment: 'stopped' } })
})

test('what was recorded last can be taken back from its own place', () => {
  const { model } = wall(running(), 20)
  model.press('deSlot', 2)
  expect(model.recorder.undo).toMatchObject({ words: 'De-slot recorded 11:20:00', place: 2 })
  model.recorder.takeBack()
  expect(model.recorder.undo).toBeUndefined()
  expect(model.said[0]).toMatchObject({ words: 'De-slot', undone: true })
})

test('an open call can be marked heard for the driver', () => {
  const log = running()
  log.add(20, 'call.1', { person: ADA, words: 'Come in this lap' })
  const { meeting, model } = wall(log, 20.2)
  expect(model.calls).toMatchObject([{ words: '11:20 to Ada: Come in this lap' }])
  expect(model.litCall).toBe(model.calls[0]?.id)
  model.heard(model.calls[0]?.id ?? '')
  expect(meeting.last).toMatchObject({ kind: 'answer.1', body: { answer: 'heard' } })
  expect(model.calls).toEqual([])
})

test('the clock is read for the segment that runs', () => {
  const { meeting, model } = wall(running(), 20)
  model.press('setClock', 5)
  model.setClock('toGo', 6_000_000)
  expect(meeting.last?.body).toEqual({ segment: 's1', shows: 'toGo', readingMs: 6_000_000 })
  // 120 min − 100 min 00 s to go: the segment shows what the hall shows.
  expect(model.head.figure).toBe('1:40:00')
})

test('before the start it counts to the planned time and offers green for the first segment', () => {
  const { meeting, model } = wall(prepared(), -12)
  expect(model.head).toMatchObject({ power: 'Before the start', figure: '12:00' })
  model.press('green', 0)
  expect(meeting.last).toEqual({ kind: 'green.1', body: { segment: 's1' } })
})

test('without documents the wall still stands', () => {
  const { model } = wall(prepared('rules', 'crew', 'car', 'plan'), 0)
  expect(model.stint).toMatchObject({ label: 'counts from green' })
  expect(model.stint.name).toBeUndefined()
  expect(model.ribbon.rows).toEqual([])
  expect(model.bar.shown.map(({ word }) => word)).toEqual(['Fault', 'Note', 'More'])
})
