/**
 * One meeting, scripted by hand: two segments of 20:00 with a break of 10:00, a mandatory stop of 45 s in the
 * window 8:00 to 12:00, and a track call of 30 s in the middle of that stop. Times are minutes after green.
 */
import { describe, expect, test } from 'vitest'
import { obligations } from '../obligations/obligations.ts'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { policy, smallMeeting } from '../testing/small-meeting.ts'
import { segmentsOf } from '../time/programme.ts'
import { phaseOf } from './phase.ts'
import { segmentClock } from './segment-clock.ts'
import { stintClock } from './stint-clock.ts'
import { stopClock } from './stop-clock.ts'
import { stopsDone } from './stops-done.ts'

/** Meeting time at so many minutes and seconds after green. */
function at(minutes: number, seconds = 0): number {
  return GREEN + minutes * 60_000 + seconds * 1_000
}

function rules(does: 'runs' | 'holds'): readonly Rule[] {
  return [
    { id: 'owed', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } },
    {
      id: 'least',
      kind: 'stopMinimum',
      value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' },
    },
    {
      id: 'when',
      kind: 'stopWindows',
      value: {
        windows: [
          { id: 'in-one', segment: 'one', fromMs: 480_000, toMs: 720_000 },
          { id: 'in-two', segment: 'two', fromMs: 480_000, toMs: 720_000 },
        ],
      },
    },
    policy('segment', does),
    policy('stopMinimum', does),
    policy('driving', does),
  ]
}

/** The car stops at 9:50; power is off from 10:05 to 10:35. */
function meeting(does: 'runs' | 'holds', until: 'off' | 'on'): Pressing {
  const pressing = smallMeeting({ rules: rules(does) })
  pressing.press(at(0), 'green.1', { segment: 'one' })
  pressing.press(at(9, 50), 'stopIn.1', { moment: 'stopped' })
  pressing.press(at(10, 5), 'trackCall.1', {})
  if (until === 'on') pressing.press(at(10, 35), 'powerOn.1', {})
  return pressing
}

describe('where a track call holds every clock', () => {
  test('L29: at 10:20 the race clock stands at 10:05 and its end has slid by 15 s', () => {
    const state = meeting('holds', 'off').state()
    const now = at(10, 20)
    expect(phaseOf(state)).toMatchObject({ phase: 'powerOff', cause: 'trackCall' })
    expect(segmentClock(state, now)).toMatchObject({
      // 10:05 gone; 20:00 − 10:05 = 9:55 to go.
      ...{ elapsedMs: 605_000, toGoMs: 595_000, running: false, assumed: false },
      // Green and track call, 1,000 ms each.
      boundMs: 2_000,
    })
    // 10:20 + 9:55 = 20:15.
    expect(segmentsOf(state, now)[0]?.endsAt).toBe(at(20, 15))
    // Then the break of 10:00.
    expect(segmentsOf(state, now)[1]?.startsAt).toBe(at(30, 15))
  })

  test('L30: at 10:20 the minimum has 30 s left, holds, and there is no GO', () => {
    const state = meeting('holds', 'off').state()
    const stop = stopClock(state, at(10, 20))
    expect(stop).toMatchObject({
      ...{ ordinal: 1, mandatory: true, countedFrom: at(9, 50), minimumMs: 45_000 },
      // 9:50 to 10:20 is 30 s, of which 15 s counted: 45 − 15 = 30 s.
      ...{ elapsedMs: 30_000, remainingMs: 30_000, running: false, assumed: false },
    })
    expect(stop?.goAt).toBeUndefined()
    const go = obligations(state, at(10, 20)).find(({ kind }) => kind === 'stopGo')
    // Were the power on now: 30 s and the captain's 2 s.
    expect(go).toMatchObject({ held: true, dueAt: at(10, 52) })
  })

  test('L30: from 10:35 on the minimum ends at 11:05, and GO is at 11:07', () => {
    const state = meeting('holds', 'on').state()
    // 9:50 + 45 s + 30 s held = 11:05; + 2 s = 11:07.
    expect(stopClock(state, at(10, 45))).toMatchObject({ remainingMs: 20_000, goAt: at(11, 7) })
    expect(stopClock(state, at(11, 10))).toMatchObject({ remainingMs: 0, goAt: at(11, 7) })
  })
})

describe('after a track call that held every clock', () => {
  test('L29: the segment ends 30 s late and the stint with it', () => {
    const pressing = meeting('holds', 'on')
    const moves = [{ person: PEOPLE.Okello, duty: 'controller' as const }]
    pressing.press(at(11, 7), 'stopOut.1', { moment: 'leaving', moves })
    const state = pressing.state()
    const now = at(15)
    // 15:00 − 30 s = 14:30 on the clock; 5:30 to go; 15:00 + 5:30 = 20:30.
    expect(segmentClock(state, now)).toMatchObject({ elapsedMs: 870_000, toGoMs: 330_000 })
    expect(stintClock(state, now)).toMatchObject({
      ...{ person: PEOPLE.Okello, since: at(11, 7), plannedEndAt: at(20, 30), toGoMs: 330_000 },
      // 11:07 to 15:00, all of it after the call.
      drivenMs: 233_000,
      // The clock showed 10:37 when Okello began: 20:00 − 10:37 = 9:23.
      lengthMs: 563_000,
      running: true,
    })
    expect(stopsDone(state, now)).toMatchObject({ done: 1, demanded: 1 })
  })

  test('L31: the first stint drove to 10:05 and stood for the rest of the call', () => {
    // 10:20 − 15 s of call = 10:05.
    expect(stintClock(meeting('holds', 'off').state(), at(10, 20))).toMatchObject({
      ...{ person: PEOPLE.Solveig, drivenMs: 605_000, running: false },
      // Planned to 10:00 on the clock, which shows 10:05: over by 5 s.
      toGoMs: -5_000,
    })
  })

  test('the second segment starts its own clock, and owes its own stop', () => {
    const pressing = meeting('holds', 'on')
    pressing.press(at(11, 7), 'stopOut.1', { moment: 'leaving' })
    pressing.press(at(20, 31), 'segmentEnd.1', { segment: 'one' })
    const between = pressing.state()
    expect(phaseOf(between)).toMatchObject({
      ...{ phase: 'between', between: 'break' },
      ...{ segment: { index: 0, of: 2 }, next: { index: 1, of: 2 } },
    })
    expect(segmentClock(between, at(25))).toBeUndefined()
    // 20:31 + 10:00.
    expect(segmentsOf(between, at(25))[1]?.startsAt).toBe(at(30, 31))
    pressing.press(at(31), 'green.1', { segment: 'two' })
    const state = pressing.state()
    expect(segmentClock(state, at(33))).toMatchObject({ elapsedMs: 120_000, toGoMs: 1_080_000 })
    expect(stopsDone(state, at(33))).toMatchObject({
      ...{ done: 0, demanded: 1 },
      // 31:00 + 8:00 and + 12:00.
      windows: [
        { id: 'in-one', state: 'served' },
        { id: 'in-two', state: 'ahead', opensAt: at(39), closesAt: at(43) },
      ],
    })
    pressing.press(at(51), 'segmentEnd.1', { segment: 'two' })
    expect(phaseOf(pressing.state()).phase).toBe('finished')
  })
})

describe('where a track call holds no clock', () => {
  test('L29: at 10:20 the race clock shows 10:20 and the end stays at 20:00', () => {
    const state = meeting('runs', 'off').state()
    const now = at(10, 20)
    expect(phaseOf(state).phase).toBe('powerOff')
    expect(segmentClock(state, now)).toMatchObject({
      ...{ elapsedMs: 620_000, toGoMs: 580_000, running: true, assumed: false },
      // Green alone: the call moved nothing.
      boundMs: 1_000,
    })
    expect(segmentsOf(state, now)[0]?.endsAt).toBe(at(20))
    expect(segmentsOf(state, now)[1]?.startsAt).toBe(at(30))
  })

  test('L30: the minimum runs on and GO is at 10:37 all along', () => {
    // 9:50 + 45 s + 2 s = 10:37; at 10:20 30 s have counted.
    expect(stopClock(meeting('runs', 'off').state(), at(10, 20))).toMatchObject({
      ...{ remainingMs: 15_000, goAt: at(10, 37), running: true },
    })
    expect(stopClock(meeting('runs', 'on').state(), at(10, 36))).toMatchObject({
      ...{ remainingMs: 0, goAt: at(10, 37) },
    })
  })

  test('L31: driving counts through the call, and the stint ends at 20:00', () => {
    const pressing = meeting('runs', 'on')
    expect(stintClock(pressing.state(), at(10, 36))).toMatchObject({
      ...{ person: PEOPLE.Solveig, drivenMs: 636_000, toGoMs: -36_000, running: true },
    })
    const moves = [{ person: PEOPLE.Okello, duty: 'controller' as const }]
    pressing.press(at(10, 37), 'stopOut.1', { moment: 'leaving', moves })
    expect(stintClock(pressing.state(), at(15))).toMatchObject({
      // 10:37 to 15:00; 20:00 − 10:37 = 9:23 in all, 5:00 of it to go.
      ...{ drivenMs: 263_000, plannedEndAt: at(20), toGoMs: 300_000, lengthMs: 563_000 },
    })
  })
})
