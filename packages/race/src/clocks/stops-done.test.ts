import { describe, expect, test } from 'vitest'
import type { Plan } from '../documents/plan.ts'
import type { Rule } from '../rules/index.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, SECOND, smallMeeting, type Documents } from '../testing/small-meeting.ts'
import { countedMoments, stopClock } from './stop-clock.ts'
import { stopsDone } from './stops-done.ts'

const minimum = (value: Extract<Rule, { kind: 'stopMinimum' }>['value']): Rule => ({
  id: 'least',
  kind: 'stopMinimum',
  value,
})
const least = minimum({ minimumMs: 45_000, from: 'stopped', to: 'leaving' })
const owed = (count: number, per: 'segment' | 'race'): Rule => ({
  id: 'owed',
  kind: 'mandatoryStops',
  value: { count, per },
})
const windows: Rule = {
  id: 'when',
  kind: 'stopWindows',
  value: {
    windows: [
      { id: 'early', segment: 'one', fromMs: 300_000, toMs: 480_000 },
      { id: 'late', segment: 'one', fromMs: 720_000, toMs: 900_000 },
    ],
  },
}

function running(documents: Documents): Pressing {
  const pressing = smallMeeting(documents)
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function visit(pressing: Pressing, minute: number, planned?: string): string {
  const at = GREEN + minute * MINUTE
  const stop = pressing.press(at, 'stopIn.1', {
    moment: 'stopped',
    ...(planned ? { planned } : {}),
  })
  pressing.press(at + 50 * SECOND, 'stopOut.1', { moment: 'leaving' })
  return stop
}

const standings = (pressing: Pressing, minute: number) =>
  stopsDone(pressing.state(), GREEN + minute * MINUTE).windows.map(({ state }) => state)

describe('windows', () => {
  test('L32: open, close and are missed on the race clock', () => {
    const pressing = running({ rules: [windows] })
    expect(standings(pressing, 4)).toEqual(['ahead', 'ahead'])
    expect(standings(pressing, 5)).toEqual(['open', 'ahead'])
    expect(standings(pressing, 8)).toEqual(['open', 'ahead'])
    expect(standings(pressing, 9)).toEqual(['missed', 'ahead'])
    pressing.press(GREEN + 10 * MINUTE, 'segmentEnd.1', { segment: 'one' })
    expect(standings(pressing, 11)).toEqual(['missed', 'missed'])
  })

  test('L32: are served by the first visit whose first moment lies in them', () => {
    const pressing = running({ rules: [windows] })
    visit(pressing, 4)
    const serving = visit(pressing, 6)
    visit(pressing, 7)
    const done = stopsDone(pressing.state(), GREEN + 10 * MINUTE)
    expect(done).toMatchObject({ done: 1, demanded: 2, windows: [{ served: serving }, {}] })
    expect(done.windows.map(({ state }) => state)).toEqual(['served', 'ahead'])
  })

  test('L32: a car that comes in before the window opens does not serve it, however long it stays', () => {
    const pressing = running({ rules: [windows] })
    pressing.press(GREEN + 299 * SECOND, 'stopIn.1', { moment: 'pitEntry' })
    pressing.press(GREEN + 301 * SECOND, 'stopIn.1', { moment: 'stopped' })
    expect(standings(pressing, 6)).toEqual(['open', 'ahead'])
  })
})

describe('mandatory stops', () => {
  const stops: Plan['stops'] = [
    { id: 'm', segment: 'one', atMs: 360_000, mandatory: true },
    { id: 'f', segment: 'one', atMs: 600_000, mandatory: false, task: 'Rear axle' },
  ]

  test('without windows the first visits count, as many as are owed', () => {
    const pressing = running({ rules: [owed(1, 'segment'), least] })
    visit(pressing, 3)
    visit(pressing, 6)
    expect(stopsDone(pressing.state(), GREEN + 8 * MINUTE)).toMatchObject({ done: 1, demanded: 1 })
  })

  test('a visit that the plan has as something else is none', () => {
    const pressing = running({ rules: [owed(1, 'race'), least], plan: { ...plan, stops } })
    visit(pressing, 3, 'f')
    expect(stopsDone(pressing.state(), GREEN + 4 * MINUTE)).toMatchObject({ done: 0, demanded: 1 })
    visit(pressing, 6, 'm')
    expect(stopsDone(pressing.state(), GREEN + 8 * MINUTE).done).toBe(1)
  })

  test('are numbered within what they are owed for; other visits among all', () => {
    const pressing = running({ rules: [owed(2, 'segment'), least], plan: { ...plan, stops } })
    visit(pressing, 3)
    pressing.press(GREEN + 6 * MINUTE, 'stopIn.1', { moment: 'stopped' })
    const second = stopClock(pressing.state(), GREEN + 6 * MINUTE)
    expect(second).toMatchObject({ mandatory: true, ordinal: 2 })
    pressing.press(GREEN + 7 * MINUTE, 'stopOut.1', { moment: 'leaving' })
    pressing.press(GREEN + 10 * MINUTE, 'stopIn.1', { moment: 'stopped', planned: 'f' })
    const third = stopClock(pressing.state(), GREEN + 10 * MINUTE)
    expect(third).toMatchObject({ mandatory: false, ordinal: 3 })
    expect(third?.minimumMs).toBeUndefined()
  })
})

const now = GREEN + 6 * MINUTE + 20 * SECOND
const pitting = (rules: readonly Rule[], moments: readonly ('pitEntry' | 'stopped')[]) => {
  const pressing = running({ rules: [owed(1, 'segment'), ...rules] })
  for (const [place, moment] of moments.entries()) {
    pressing.press(GREEN + 6 * MINUTE + place * 5 * SECOND, 'stopIn.1', { moment })
  }
  return stopClock(pressing.state(), now)
}

describe('the minimum', () => {
  test('L30: counts from the moment the rules name', () => {
    const fromEntry = minimum({ minimumMs: 45_000, from: 'pitEntry', to: 'pitExit' })
    // 20 s since entry, 15 s since stopped.
    expect(pitting([fromEntry], ['pitEntry', 'stopped'])).toMatchObject({ remainingMs: 25_000 })
    expect(pitting([least], ['pitEntry', 'stopped'])).toMatchObject({ remainingMs: 30_000 })
  })

  test('L30: has not begun while the car rolls in, and there is no GO', () => {
    const rolling = pitting([least], ['pitEntry'])
    expect(rolling).toMatchObject({ remainingMs: 45_000, elapsedMs: 20_000 })
    expect([rolling?.goAt, rolling?.countedFrom]).toEqual([undefined, undefined])
  })

  test('L30: counted from entry, a car of which only the stopping was seen counts from there', () => {
    const fromEntry = minimum({ minimumMs: 45_000, from: 'pitEntry', to: 'pitExit' })
    expect(pitting([fromEntry], ['stopped'])).toMatchObject({ remainingMs: 25_000 })
  })

  test('L30: GO waits for the captain’s margin', () => {
    const captain = { ...plan.captain, goMarginMs: 3_000 }
    const pressing = running({ rules: [owed(1, 'race'), least], plan: { ...plan, captain } })
    pressing.press(GREEN + 6 * MINUTE, 'stopIn.1', { moment: 'stopped' })
    // 6:00 + 0:45 + 0:03.
    expect(stopClock(pressing.state(), now)?.goAt).toBe(GREEN + 408 * SECOND)
  })
})

describe('what is not known of the minimum', () => {
  test('says what it assumes: what a call does to it, and from when it counts', () => {
    expect(pitting([least], ['stopped'])?.assumed).toBe(true)
    const known: Rule = {
      ...{ id: 'call', kind: 'clockPolicy' },
      value: { clock: 'stopMinimum', under: 'trackCall', does: 'runs' },
    }
    expect(pitting([least, known], ['stopped'])?.assumed).toBe(false)
    const from = minimum({ minimumMs: 45_000, from: 'notKnownYet', to: 'leaving' })
    expect(pitting([from, known], ['stopped'])).toMatchObject({ assumed: true, from: 'stopped' })
  })

  test('that is not known gives no countdown', () => {
    const unknown = minimum({ minimumMs: 'notKnownYet', from: 'stopped', to: 'leaving' })
    expect(pitting([unknown], ['stopped'])?.remainingMs).toBeUndefined()
  })

  test('the moments that Car in and Car out record are those of the rule', () => {
    const rules = [minimum({ minimumMs: 45_000, from: 'pitEntry', to: 'pitExit' })]
    const state = smallMeeting({ rules }).state()
    expect(countedMoments(state, GREEN)).toEqual({
      from: 'pitEntry',
      to: 'pitExit',
      assumed: false,
    })
  })
})
