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
  const rest = ['Note', 'Call somebody', 'Power is off', 'More', 'Car out']
  expect(words()).toEqual(['Undo car in', ...rest])
  meeting.undoable = undefined
  expect(words()).toEqual(['More work', ...rest])
  expect(model.undo).toBeUndefined()
})

test('Undo car in ends the stop', () => {
  const { model } = stopAt(39)
  model.press('undoCarIn', 0)
  expect(model.stop).toBeUndefined()
})

test('places keep still when the power goes and comes', () => {
  const { model, words } = stopAt(39)
  model.press('powerOff', 3)
  expect(words()).toEqual([
    ...['More work', 'Note', 'Call somebody'],
    ...['Power is on', 'More', 'Car out'],
  ])
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
  model.press('carOut', 5)
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
  model.press('carOut', 5)
  expect(meeting.last).toEqual({ kind: 'stopOut.1', body: { moment: 'leaving' } })
})

test('a change made while the car is in is not made again when it leaves', () => {
  const { meeting, wall, model } = stopAt(39)
  wall.change(model.moves)
  expect(model.carries).toBe(false)
  expect(meeting.last?.kind).toBe('handover.1')
})

test('jobs done go with the car as work, jobs nobody touched do not', () => {
  const log = running()
  const braid = log.add(20, 'faultNoted.1', { fault: 'Braid' })
  log.add(21, 'faultNoted.1', { fault: 'Splitter' })
  const { meeting, model } = stopAt(10, log)
  meeting.at(22)
  model.work.done(braid)
  expect(model.work.jobs).toMatchObject([
    { what: 'Splitter', done: false },
    { what: 'Braid', done: true },
  ])
  model.press('carOut', 5)
  expect(meeting.last).toEqual({
    kind: 'stopOut.1',
    body: { moment: 'leaving', work: [{ what: 'Braid', fault: braid, done: true }] },
  })
})

/** Two faults open, the car in ten minutes after green. */
function withTwoFaults() {
  const log = running()
  const braid = log.add(8, 'faultNoted.1', { fault: 'Braid' })
  const splitter = log.add(9, 'faultNoted.1', { fault: 'Splitter' })
  return { ...stopAt(10, log), braid, splitter }
}

test('Job done and Leave this job are about the first job that is still to do', () => {
  const { meeting, model, braid, splitter } = withTwoFaults()
  expect(model.verbs[1]).toEqual({ id: 'jobDone', word: 'Job done', hint: 'Braid' })
  model.press('jobDone', 1)
  expect(meeting.last).toEqual({ kind: 'repairFinished.1', body: { fault: braid } })
  expect(model.verbs[2]).toEqual({ id: 'leaveJob', word: 'Leave this job', hint: 'Splitter' })
  model.press('leaveJob', 2)
  expect(model.work.jobs.find(({ id }) => id === splitter)).toMatchObject({ left: true })
  expect(model.verbs.map(({ word }) => word).slice(1, 3)).toEqual(['Note', 'Call somebody'])
  meeting.at(11)
  model.press('carOut', 5)
  expect(meeting.last?.body).toMatchObject({
    work: [
      { what: 'Braid', fault: braid, done: true },
      { what: 'Splitter', fault: splitter, done: false },
    ],
  })
})

test('a job that is left while it is being mended is paused', () => {
  const { meeting, model, braid } = withTwoFaults()
  model.work.start(braid)
  expect(meeting.last).toEqual({ kind: 'repairStarted.1', body: { fault: braid } })
  model.work.leave(braid)
  expect(meeting.last).toEqual({ kind: 'repairPaused.1', body: { fault: braid } })
})

test('jobs change places, and stay there', () => {
  const { model, braid, splitter } = withTwoFaults()
  const order = () => model.work.jobs.map(({ id }) => id)
  model.work.shift(splitter, -1)
  expect(order()).toEqual([splitter, braid])
  model.work.shift(splitter, -1)
  expect(order()).toEqual([splitter, braid])
  model.work.shift(splitter, 1)
  expect(order()).toEqual([braid, splitter])
})

test('a tile puts work on the list, on every screen, and the list says what to mind', () => {
  const { meeting, model } = stopAt(10)
  model.press('moreWork', 0)
  expect(model.work.adding).toBe(true)
  model.work.add('work Wipe tyres')
  expect(model.work.adding).toBe(false)
  expect(meeting.last).toEqual({ kind: 'workTicked.1', body: { work: 'Wipe tyres', done: false } })
  model.work.add('fault Splitter')
  expect(meeting.last).toEqual({ kind: 'faultNoted.1', body: { fault: 'Splitter' } })
  expect(model.work.jobs).toMatchObject([
    { what: 'Splitter', cautions: [] },
    { what: 'Wipe tyres', cautions: [] },
  ])
})

test('hot work is not offered while the minimum counts, and after it is', () => {
  const { meeting, model } = stopAt(40)
  model.work.add('work Solder a wire')
  expect(model.face?.counts).toBe('down')
  expect(model.work.jobs).toMatchObject([{ what: 'Solder a wire', cautions: [{ of: 'solder' }] }])
  expect(model.work.jobs[0]?.notNow).toMatch(/the captain has not allowed/)
  expect(model.work.current).toBeUndefined()
  // 45 s of minimum and 2 s of the captain's are over after 48 s.
  meeting.at(40.8)
  expect(model.face?.counts).toBe('go')
  expect(model.work.jobs[0]?.notNow).toBeUndefined()
  expect(model.work.current?.what).toBe('Solder a wire')
})

test('hot work is offered at once where the captain allows it', () => {
  const log = running('plan')
  log.adopt('plan', {
    spans: [],
    stops: [{ id: 's1p1', segment: 's1', atMs: 2_400_000, mandatory: true }],
    captain: { goMarginMs: 0, askForClockAtMs: 5_000, hotWorkInStops: true },
  })
  const { model } = stopAt(40, log)
  model.work.add('work Glue a part')
  expect(model.face?.counts).toBe('down')
  expect(model.work.current).toMatchObject({ what: 'Glue a part', cautions: [{ of: 'glue' }] })
})

test('hands are free at the bench and off duty, but for those this stop moves', () => {
  const log = running()
  log.add(1, 'dutyTaken.1', { person: CHO, duty: 'bench' })
  expect(stopAt(10, log).model.work.free).toBe('Hands free: Cho at the bench')
  // At 11:39 the change planned for this stop sends Cho to post 4, and nobody is left.
  expect(stopAt(39, log).model.work.free).toBe('Nobody has their hands free.')
})

test('whoever is late has no hand to spare', () => {
  const log = running()
  log.add(1, 'availability.1', { person: CHO, state: 'late' })
  expect(stopAt(10, log).model.work.free).toBe('Nobody has their hands free.')
  log.add(2, 'availability.1', { person: CHO, state: 'here' })
  expect(stopAt(10, log).model.work.free).toBe('Hands free: Cho')
})

test('the moments that count stand out, the others are quiet', () => {
  const { model } = stopAt(39)
  expect(model.moments).toEqual([
    { moment: 'pitEntry', word: 'Pit entry', counted: false },
    { moment: 'stopped', word: 'Stopped', counted: true, time: '11:39:00' },
    { moment: 'leaving', word: 'Leaving', counted: true },
    { moment: 'pitExit', word: 'Pit exit', counted: false },
  ])
  expect(model.mayLeave).toBe(false)
})

test('what the change says is not said again by alerts, what lies elsewhere is', () => {
  const { model } = stopAt(39)
  const kinds = model.told.map((id) => id.split(':')[0])
  expect(new Set(kinds)).toEqual(new Set(['stopGo', 'stintEnd', 'nextDuty', 'relief']))
  // Of the second change, planned for 12:20, nothing: its spans end in 2.
  expect(model.told.filter((id) => id.endsWith('2'))).toEqual([])
  // Half an hour before its time the change is not meant for this stop, and its alerts are heard.
  expect(stopAt(10).model.told.map((id) => id.split(':')[0])).toEqual(['stopGo'])
})
