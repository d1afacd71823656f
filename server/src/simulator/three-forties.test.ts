/** What a newcomer to the demo gets to see, folded from its script alone. */
import {
  callsNow,
  compulsoryRepairs,
  faultClocks,
  isUnread,
  penalties,
  stopVerdict,
} from '@pitlamp/race'
import { expect, test } from 'vitest'
import { DEMOS } from './demo.ts'
import { replayed } from './testing/replayed.ts'

const { folder, openAtMs } = DEMOS.digital
const { script, entries, atOf, stateAt } = replayed(folder)

test('everything in it is read, and all of it adds up', () => {
  expect(entries.filter(isUnread)).toEqual([])
  expect(stateAt('3:00:00').problems).toEqual([])
})

test('a newcomer arrives in the middle of the second segment, and something is about to happen', () => {
  const soon = script.presses.filter(
    ({ offsetMs }) => offsetMs > openAtMs && offsetMs <= openAtMs + 60_000,
  )
  expect(stateAt('0:59:30').raceControl.runs.at(-1)).toMatchObject({ segment: 's2' })
  expect(soon.length).toBeGreaterThan(0)
})

test('the splitter must be mended within thirty laps, and is', () => {
  // Noted at 1:01:20; Kofi laps in 8.61 s: 30 laps are 258.3 s, of which 100 s are over at 1:03:00.
  expect(compulsoryRepairs(stateAt('1:03:00'), atOf('1:03:00'))).toMatchObject([
    { rule: 'splitter', clause: '6.4', limit: { by: 'laps', remainingMs: 158_300 } },
  ])
  expect(compulsoryRepairs(stateAt('1:05:00'), atOf('1:05:00'))).toEqual([])
})

test('a stop is left three seconds early, and its penalty is served', () => {
  const state = stateAt('1:05:00')
  // 1:04:02 to 1:04:44: 42 of 45 s.
  expect(stopVerdict(state, state.car.stops.at(-1)?.entry ?? '')).toMatchObject({
    verdict: 'early',
    byMs: -3_000,
    costs: [{ is: 'stopAndGo', clause: '7.1' }],
  })
  const status = (time: string) => penalties(stateAt(time), atOf(time)).map((one) => one.status)
  expect(status('1:06:00')).toEqual(['toServe'])
  expect(status('1:07:00')).toEqual(['served'])
})

test('somebody does not answer, and the call passes on', () => {
  // Called at 1:10:30; after a minute it is the next one's who is free.
  const called = (time: string) => callsNow(stateAt(time), atOf(time)).map(({ state }) => state)
  expect(called('1:11:00')).toEqual(['waiting'])
  expect(called('1:11:40')).toEqual(['passedOn'])
  expect(called('1:12:00')).toEqual([])
})

test('one penalty is thought wrong, with a note while it may be protested', () => {
  const [, contact] = penalties(stateAt('1:15:00'), atOf('1:15:00'))
  expect(contact).toMatchObject({
    status: 'standing',
    // Half an hour from 1:13:40.
    protest: { until: atOf('1:43:40'), over: false },
    notes: [{ body: { words: expect.stringMatching(/^Not ours/) as string } }],
  })
})

test('the motor runs hotter at every reading until it fails', () => {
  const state = stateAt('2:05:00')
  const read = state.car.measurements
    .filter(({ body }) => body.quantity === 'Motor temperature')
    .map(({ body }) => body.valueMilli)
  expect(read).toEqual([44_000, 51_500, 59_000, 63_500, 74_500])
  const open = faultClocks(state, atOf('2:05:00')).filter(({ fault }) => !fault.ended)
  expect(open.map(({ fault }) => fault.fault)).toEqual(['Motor', 'Lights'])
})
