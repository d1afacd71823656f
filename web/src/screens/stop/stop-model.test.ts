import { expect, test } from 'vitest'
import { ADA, BEN, CHO, running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { WallModel } from '../wall/wall-model.svelte.ts'
import { StopModel } from './stop-model.svelte.ts'

function stopAt(minutes: number, log = running()) {
  const meeting = new PaperMeeting(log, minutes)
  const wall = new WallModel(() => meeting)
  wall.press('carIn', 0)
  const model = new StopModel(
    () => meeting,
    () => wall,
  )
  const words = () => model.verbs.map(({ word }) => word)
  return { meeting, wall, model, words }
}

test('where Car in was stands Undo, and after ten seconds More work', () => {
  const { meeting, model, words } = stopAt(39)
  expect(words()).toEqual(['Undo car in', 'Note', 'Power is off', 'More', 'Car out'])
  meeting.undoable = undefined
  expect(words()).toEqual(['More work', 'Note', 'Power is off', 'More', 'Car out'])
  expect(model.undo).toBeUndefined()
})

test('Undo car in ends the stop', () => {
  const { model } = stopAt(39)
  model.press('undoCarIn', 0)
  expect(model.stop).toBeUndefined()
})

test('places keep still when the power goes and comes', () => {
  const { model, words } = stopAt(39)
  model.press('powerOff', 2)
  expect(words()).toEqual(['More work', 'Note', 'Power is on', 'More', 'Car out'])
})

test('Stopped is asked for while only the pit entry was recorded', () => {
  const log = running()
  log.add(39, 'stopIn.1', { moment: 'pitEntry' })
  const meeting = new PaperMeeting(log, 39.1)
  const wall = new WallModel(() => meeting)
  const model = new StopModel(
    () => meeting,
    () => wall,
  )
  expect(model.verbs[1]?.word).toBe('Stopped')
  model.press('stopped', 1)
  expect(meeting.last).toEqual({ kind: 'stopIn.1', body: { moment: 'stopped' } })
  expect(model.verbs[1]?.word).toBe('Note')
})

test('the change planned for this stop goes with the car', () => {
  const { meeting, model } = stopAt(39)
  expect(model.change).toBe('Cho to post 4, Ben drives, Ada off duty')
  expect(model.carries).toBe(true)
  meeting.at(40)
  model.press('carOut', 4)
  expect(meeting.last).toEqual({
    kind: 'stopOut.1',
    body: {
      moment: 'leaving',
      moves: [
        { person: CHO, duty: 'post', post: '4' },
        { person: BEN, duty: 'controller' },
        { person: ADA, duty: 'offDuty' },
      ],
    },
  })
})

test('a change planned for much later stays until somebody ticks it', () => {
  const { meeting, model } = stopAt(10)
  expect(model.carries).toBe(false)
  model.press('carOut', 4)
  expect(meeting.last).toEqual({ kind: 'stopOut.1', body: { moment: 'leaving' } })
})

test('a change made while the car is in is not made again when it leaves', () => {
  const { meeting, wall, model } = stopAt(39)
  wall.change(model.moves)
  expect(model.carries).toBe(false)
  expect(meeting.last?.kind).toBe('handover.1')
})

test('jobs done go with the car as work', () => {
  const log = running()
  const braid = log.add(20, 'faultNoted.1', { fault: 'Braid' })
  log.add(21, 'faultNoted.1', { fault: 'Splitter' })
  const { meeting, model } = stopAt(10, log)
  meeting.at(22)
  model.job(braid, 'mended')
  expect(model.jobs).toMatchObject([
    { what: 'Splitter', done: false },
    { what: 'Braid', done: true },
  ])
  model.press('carOut', 4)
  expect(meeting.last).toEqual({
    kind: 'stopOut.1',
    body: { moment: 'leaving', work: [{ what: 'Braid', fault: braid, done: true }] },
  })
})
