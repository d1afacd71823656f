import { stopClock } from '@pitlamp/race'
import { expect, test } from 'vitest'
import type { ClockShown } from '../../meeting/port.ts'
import { MINUTE, running, START, type Missing, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { stopFace } from './stop-face.ts'

const SET: ClockShown = { standing: 'set', boundMs: 10 }

/** The face so many seconds after the car stopped at 11:40:00. */
function after(seconds: number, log: PaperLog, clock = SET) {
  const { state } = new PaperMeeting(log, 40)
  const now = START + 40 * MINUTE + seconds * 1_000
  const stop = stopClock(state, now)
  if (!stop) throw new Error('The car is out.')
  return stopFace(stop, { state, now, clock, timeZone: 'UTC' })
}

function stopped(...without: Missing[]): PaperLog {
  const log = running(...without)
  log.add(40, 'stopIn.1', { moment: 'stopped', planned: 's1p1' })
  return log
}

test('the minimum burns down from the moment the rules count from', () => {
  // 45 s − 22 s = 23 s; 23 / 45 = 0.511.
  const face = after(22, stopped())
  expect(face).toMatchObject({
    counts: 'down',
    big: '0:23',
    label: 'Mandatory stop 1, timed from stopped to leaving. Not before',
    urgency: 'calm',
    held: false,
  })
  expect(face.left).toBeCloseTo(0.511, 3)
  expect(face.under).toEqual(['GO comes 2 s after the minimum'])
})

test('what leaving now costs is said while the minimum is not over', () => {
  const log = stopped('rules')
  log.adopt('rules', {
    name: 'Early costs',
    timeZone: 'UTC',
    programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 7_200_000 } }],
    rules: [
      { id: 'r1', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
      {
        id: 'r2',
        kind: 'stopMinimum',
        value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' },
      },
      {
        ...{ id: 'r3', kind: 'penalty', clause: '§ 9' },
        value: {
          ...{ for: 'stop left early', is: 'seconds', amount: 2 },
          ...{ per: 'secondShort', scope: 'race' },
        },
      },
    ],
  })
  // 45 − 33.4 = 11.6 s short: 12 begun, at 2 s each.
  expect(after(33.4, log).under).toEqual([
    'GO comes 2 s after the minimum',
    '12 s short: leaving now costs 24 s held (§ 9)',
  ])
  expect(after(45, log).under).toEqual(['GO comes 2 s after the minimum'])
})

test('GO comes after the minimum and the captain’s margin, not before', () => {
  expect(after(45, stopped())).toMatchObject({ counts: 'down', big: '0:00' })
  expect(after(45, stopped()).label).toMatch(/Wait for GO$/)
  // 45 s + 2 s margin.
  expect(after(46.9, stopped()).counts).toBe('down')
  expect(after(47, stopped())).toMatchObject({
    counts: 'go',
    big: 'GO',
    under: ['The car may leave.'],
  })
  expect(after(52, stopped()).under).toEqual(['The car could have left 0:05 ago.'])
})

test('a screen whose clock is not set gives no GO but the two instants it lies between', () => {
  const roughly: ClockShown = { standing: 'roughly', boundMs: 400 }
  const notSure: ClockShown = { standing: 'notSure', boundMs: 2_000 }
  expect(after(22, stopped(), notSure).under[0]).toBe(
    'GO between 11:40:45 and 11:40:49: this screen’s clock is not set',
  )
  expect(after(60, stopped(), roughly).counts).toBe('down')
})

test('while the power is off the minimum stands, and the screen says so', () => {
  const log = stopped()
  log.add(40 + 10 / 60, 'trackCall.1', {})
  const face = after(30, log)
  expect(face).toMatchObject({ big: '0:35', held: true })
  expect(face.under[1]).toBe('The minimum stands until power is on')
})

test('a car that passed the pit entry counts once it has stopped', () => {
  const log = running()
  log.add(40, 'stopIn.1', { moment: 'pitEntry', planned: 's1p1' })
  expect(after(6, log)).toMatchObject({
    counts: 'nothingYet',
    big: '0:45',
    under: ['It counts from stopped: press it then.'],
  })
})

test('without a minimum it counts up and says that the rules name none', () => {
  expect(after(72, stopped('rules', 'plan'))).toMatchObject({
    counts: 'up',
    big: '1:12',
    label: 'Stop 1, standing for',
    under: ['The rules name no minimum for this stop.'],
  })
})

test('where a call makes the minimum start again, it says so, and from when it did', () => {
  const log = stopped('rules')
  log.adopt('rules', {
    name: 'Starts again',
    timeZone: 'UTC',
    programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 7_200_000 } }],
    rules: [
      { id: 'r1', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
      {
        id: 'r2',
        kind: 'stopMinimum',
        value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' },
      },
      {
        id: 'r3',
        kind: 'clockPolicy',
        value: { clock: 'stopMinimum', under: 'trackCall', does: 'startsAgain' },
      },
    ],
  })
  log.add(40.25, 'trackCall.1', {})
  const held = after(20, log)
  expect(held).toMatchObject({ big: '0:45', left: 1, held: true })
  expect(held.under.at(-1)).toBe('The minimum starts again when power is on')
  log.add(40.5, 'powerOn.1', {})
  // Power on at 11:40:30: at 11:40:50 twenty of the forty-five are over.
  const again = after(50, log)
  expect(again).toMatchObject({ big: '0:25', held: false })
  expect(again.under).toEqual(['Started again at 11:40:30', 'GO comes 2 s after the minimum'])
})
