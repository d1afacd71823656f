/**
 * A meeting ten minutes into its only segment, the car in a mandatory stop, and what is then right,
 * worked out by hand. Seconds after the green:
 *
 *     -60 handover · 0 green · 200 track call · 230 power on · 585 the car has stopped
 */
import { createHash } from 'node:crypto'
import { segmentClock, stintClock, stopClock, type DocumentName } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import type { Device } from '../device.ts'
import type { Screen } from '../screen.ts'

const DRIVER = '018f3a50-6a00-7000-8000-00000000b001'
const NEXT = '018f3a50-6a00-7000-8000-00000000b002'

const rules = {
  name: 'Lantern Forty',
  timeZone: 'Europe/Dublin',
  programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 2_400_000 } }],
  rules: [
    { id: 'stops', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
    {
      id: 'minimum',
      kind: 'stopMinimum',
      value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
    },
    ...['segment', 'stopMinimum', 'driving'].map((clock) => ({
      id: `call-${clock}`,
      kind: 'clockPolicy',
      value: { clock, under: 'trackCall', does: 'holds' },
    })),
  ],
}
const crew = {
  people: [
    { id: DRIVER, name: 'Ida Quill', duties: ['controller', 'wall'] },
    { id: NEXT, name: 'Tom Wick', duties: ['controller', 'wall'] },
  ],
}
const drives = { duty: 'controller', segment: 's1' }
const plan = {
  spans: [
    { id: 'first', person: DRIVER, ...drives, fromMs: 0, toMs: 780_000 },
    { id: 'second', person: NEXT, ...drives, fromMs: 780_000, toMs: 2_400_000 },
  ],
  stops: [{ id: 'stop-1', segment: 's1', atMs: 560_000, mandatory: true }],
  captain: { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false },
}

export async function makeMeeting(captain: Device): Promise<string> {
  const id = uuidV7()
  await captain.call('POST', '/api/meetings', { id, name: rules.name })
  return id
}

/** Presses what has happened so far, with the green ten minutes ago. @returns the green's meeting time */
export async function pressTheRace(wall: Screen): Promise<number> {
  const greenAt = Math.round(wall.now()) - 600_000
  const after = (seconds: number) => greenAt + seconds * 1000
  const adopt = (document: DocumentName, content: object) => {
    const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
    const appliesFrom = after(-3600)
    wall.press(
      'adopted.1',
      { document, version: 1, sha256, content, appliesFrom, as: 'change' },
      after(-120),
    )
  }
  adopt('rules', rules)
  adopt('crew', crew)
  adopt('plan', plan)
  const moves = [
    { person: NEXT, duty: 'wall' as const },
    { person: DRIVER, duty: 'controller' as const },
  ]
  wall.press('handover.1', { moves }, after(-60))
  wall.press('green.1', { segment: 's1' }, after(0))
  wall.press('trackCall.1', {}, after(200))
  wall.press('powerOn.1', {}, after(230))
  const last = wall.press('stopIn.1', { moment: 'stopped', planned: 'stop-1' }, after(585))
  await wall.until('the race to be saved', () => wall.saved(last) === 'saved')
  return greenAt
}

/** What a screen must show 600 s after the green. */
const RIGHT = {
  /** 40 min less the 10 that have gone, of which 30 s did not count: 2,400 − (600 − 30) s. */
  segmentToGoMs: 1_830_000,
  /** Planned to minute 13 of the race clock, which is 30 s behind: 780 + 30 − 600 s. */
  stintToGoMs: 210_000,
  /** Stopped at 585 s, a minute at least, two seconds of the captain's: 585 + 60 + 2 − 600 s. */
  goInMs: 47_000,
}

/**
 * How far a screen's three countdowns are from what is right at this moment, in ms. The moment is taken
 * from this process's clock, which no server under test has changed.
 */
function offBy(screen: Screen, greenAt: number): Record<keyof typeof RIGHT, number> {
  const state = screen.state()
  const laterMs = Date.now() - greenAt - 600_000
  const now = screen.now()
  const go = stopClock(state, now)?.goAt ?? NaN
  return {
    segmentToGoMs: (segmentClock(state, now)?.toGoMs ?? NaN) + laterMs - RIGHT.segmentToGoMs,
    stintToGoMs: (stintClock(state, now)?.toGoMs ?? NaN) + laterMs - RIGHT.stintToGoMs,
    goInMs: go - now + laterMs - RIGHT.goInMs,
  }
}

/** The largest of them, for each screen. */
export function worst(screens: readonly Screen[], greenAt: number): readonly number[] {
  return screens.map((screen) => Math.max(...Object.values(offBy(screen, greenAt)).map(Math.abs)))
}
