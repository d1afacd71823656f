import { expect, test } from 'vitest'
import { obligations } from '../obligations/obligations.ts'
import type { RuleValue } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { energyNow } from './energy.ts'

type Value = Partial<RuleValue<'energy'>>

function running(value: Value | undefined, paceMs?: number) {
  const energy: RuleValue<'energy'> = { atEmpty: 'stands', ...value }
  const pressing = smallMeeting({
    rules: value ? [{ id: 'load', kind: 'energy', value: energy, clause: '§ 6' }] : [],
    ...(paceMs === undefined ? {} : { paceMs }),
  })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

test('from the start a full load is taken to be on, less what was run', () => {
  const pressing = running({ fullMs: 600_000 })
  pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
  pressing.press(GREEN + 3 * MINUTE, 'powerOn.1', {})
  // 10:00 less 2:00 and 1:00.
  expect(energyNow(pressing.state(), GREEN + 4 * MINUTE)).toMatchObject({
    ...{ basis: 'estimated', from: 'start', since: GREEN, running: true, empty: false },
    ...{ timeLeftMs: 420_000, lengthMs: 600_000, emptyAt: GREEN + 11 * MINUTE },
    ...{ atEmpty: 'stands', clause: '§ 6' },
  })
})

test('a reading counts as read until the car has run again', () => {
  const pressing = running({ fullLaps: 60 }, 10_000)
  pressing.press(GREEN + 3 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 3.5 * MINUTE, 'energy.1', { what: 'read', lapsLeft: 20 })
  // Twenty laps of 10 s.
  expect(energyNow(pressing.state(), GREEN + 4 * MINUTE)).toMatchObject({
    ...{ basis: 'read', from: 'read', lapsLeft: 20, timeLeftMs: 200_000, running: false },
  })
  pressing.press(GREEN + 4 * MINUTE, 'stopOut.1', { moment: 'leaving' })
  // 25 s are two and a half laps.
  expect(energyNow(pressing.state(), GREEN + 4 * MINUTE + 25_000)).toMatchObject({
    ...{ basis: 'estimated', lapsLeft: 17, timeLeftMs: 175_000, running: true },
  })
})

test('a filling without an amount fills the car, one with an amount leaves that', () => {
  const pressing = running({ fullMs: 600_000 })
  pressing.press(GREEN + 5 * MINUTE, 'energy.1', { what: 'filled' })
  expect(energyNow(pressing.state(), GREEN + 6 * MINUTE)?.timeLeftMs).toBe(540_000)
  pressing.press(GREEN + 6 * MINUTE, 'energy.1', { what: 'filled', timeLeftMs: 300_000 })
  expect(energyNow(pressing.state(), GREEN + 7 * MINUTE)?.timeLeftMs).toBe(240_000)
})

test('L43: laps without a pace are known only as long as nothing was run', () => {
  const pressing = running({ fullLaps: 60 })
  expect(energyNow(pressing.state(), GREEN)).toMatchObject({ lapsLeft: 60 })
  const later = energyNow(pressing.state(), GREEN + MINUTE)
  expect([later?.lapsLeft, later?.timeLeftMs, later?.emptyAt]).toEqual([
    undefined,
    undefined,
    undefined,
  ])
})

test('L43: how many laps there were then is still said', () => {
  const pressing = running({ fullLaps: 60 })
  expect(energyNow(pressing.state(), GREEN)?.lapsThen).toBeUndefined()
  expect(energyNow(pressing.state(), GREEN + MINUTE)).toMatchObject({
    ...{ lapsThen: 60, since: GREEN, empty: false },
  })
  pressing.press(GREEN + 2 * MINUTE, 'energy.1', { what: 'read', lapsLeft: 48 })
  expect(energyNow(pressing.state(), GREEN + 3 * MINUTE)?.lapsThen).toBe(48)
})

test('a full load known both ways tells how long a lap takes', () => {
  const pressing = running({ fullLaps: 60, fullMs: 600_000 })
  expect(energyNow(pressing.state(), GREEN + MINUTE)).toMatchObject({
    ...{ lapsLeft: 54, timeLeftMs: 540_000 },
  })
})

test('it is empty, not less than that', () => {
  const pressing = running({ fullMs: 600_000 })
  expect(energyNow(pressing.state(), GREEN + 11 * MINUTE)).toMatchObject({
    ...{ timeLeftMs: 0, empty: true, emptyAt: GREEN + 10 * MINUTE },
  })
})

test('when it was empty is counted while the car ran', () => {
  const pressing = running({ fullMs: 600_000 })
  pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
  pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
  // Two minutes before the call and eight after it: 5 + 8.
  expect(energyNow(pressing.state(), GREEN + 15 * MINUTE)?.emptyAt).toBe(GREEN + 13 * MINUTE)
})

test('nothing is said where nobody says how much there is', () => {
  expect(energyNow(running(undefined).state(), GREEN)).toBeUndefined()
  expect(energyNow(running({ fullMs: 'notKnownYet' }).state(), GREEN)).toBeUndefined()
  const pressing = running({ fullMs: 600_000 })
  pressing.press(GREEN + MINUTE, 'energy.1', { what: 'read' })
  expect(energyNow(pressing.state(), GREEN + 2 * MINUTE)).toBeUndefined()
})

test('it falls due with a wick, held while the car stands, unless it outlasts the race', () => {
  const pressing = running({ fullMs: 600_000 })
  const due = (minute: number) =>
    obligations(pressing.state(), GREEN + minute * MINUTE).find((one) => one.kind === 'energyEmpty')
  const run = pressing.state().raceControl.runs[0]?.entry
  expect(due(1)).toMatchObject({
    ...{ id: `energyEmpty:${run}`, dueAt: GREEN + 10 * MINUTE, held: false, lengthMs: 600_000 },
    ...{ estimated: true, concerns: [PEOPLE.Solveig], label: 'Energy runs out' },
  })
  pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
  expect(due(3)).toMatchObject({ held: true, dueAt: GREEN + 11 * MINUTE })
  const last = running({ fullMs: 3_600_000 })
  expect(obligations(last.state(), GREEN).map(({ kind }) => kind)).not.toContain('energyEmpty')
})

test('an empty load is over since it was empty, and nothing of it is due while the car does not run', () => {
  const pressing = running({ fullMs: 600_000 })
  const due = (minute: number) =>
    obligations(pressing.state(), GREEN + minute * MINUTE).find((one) => one.kind === 'energyEmpty')
  expect(due(12)).toMatchObject({ dueAt: GREEN + 10 * MINUTE, held: false })
  pressing.press(GREEN + 13 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(due(14)).toBeUndefined()
})
