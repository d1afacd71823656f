import { expect, test } from 'vitest'
import type { Move } from '../entry/scalars.ts'
import { DEVICES, PEOPLE } from '../testing/ids.ts'
import { GREEN, problemKinds, type Pressing } from '../testing/pressing.ts'
import { smallMeeting } from '../testing/small-meeting.ts'

const { wall, otherWall, phone } = DEVICES
const okelloDrives: Move[] = [{ person: PEOPLE.Okello, duty: 'controller' }]

function running(): Pressing {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

test('L13: the same statement from another device within ten seconds is a second witness', () => {
  const pressing = running()
  const first = pressing.by({ device: wall }).press(GREEN + 60_000, 'trackCall.1', {})
  const second = pressing.by({ device: otherWall }).press(GREEN + 70_000, 'trackCall.1', {})
  const state = pressing.state()
  expect(state.raceControl.interruptions).toMatchObject([{ entry: first, fromAt: GREEN + 60_000 }])
  const line = state.record.log.find(({ entry }) => entry.id === second)
  expect(line).toMatchObject({ standing: 'secondWitness', witnessOf: first })
  expect(state.problems).toEqual([])
})

test('L14: the wall’s time counts, also where the phone pressed first', () => {
  const pressing = running()
  const moves = okelloDrives
  const heard = pressing.by({ device: phone }).press(GREEN + 60_000, 'handover.1', { moves })
  const held = pressing.by({ device: wall }).press(GREEN + 63_000, 'handover.1', { moves })
  const state = pressing.state()
  const driver = state.people.duties.find((span) => span.person === PEOPLE.Okello)
  expect(driver).toMatchObject({ entry: held, fromAt: GREEN + 63_000 })
  const line = state.record.log.find(({ entry }) => entry.id === heard)
  expect(line).toMatchObject({ standing: 'secondWitness', witnessOf: held })
})

test('L14: between two phones the first counts', () => {
  const pressing = running()
  const moves = okelloDrives
  const asCrew = { device: otherWall, role: 'crew' } as const
  const first = pressing.by({ device: phone }).press(GREEN + 60_000, 'handover.1', { moves })
  pressing.by(asCrew).press(GREEN + 63_000, 'handover.1', { moves })
  const driver = pressing.state().people.duties.find((span) => span.person === PEOPLE.Okello)
  expect(driver).toMatchObject({ entry: first, fromAt: GREEN + 60_000 })
})

test('L14: an entry that names a witness means the one that holds', () => {
  const pressing = running()
  const held = pressing
    .by({ device: wall })
    .press(GREEN + 60_000, 'faultNoted.1', { fault: 'Braid' })
  const other = { device: phone }
  const named = pressing.by(other).press(GREEN + 62_000, 'faultNoted.1', { fault: 'Braid' })
  pressing.press(GREEN + 90_000, 'repairFinished.1', { fault: named })
  const state = pressing.state()
  expect(state.car.faults).toMatchObject([{ entry: held, ended: { how: 'mended' } }])
  expect(state.problems).toEqual([])
})

test('L15: the same device twice, or another after ten seconds, states what is already so', () => {
  const pressing = running()
  pressing.by({ device: wall }).press(GREEN + 60_000, 'trackCall.1', {})
  const again = pressing.by({ device: wall }).press(GREEN + 61_000, 'trackCall.1', {})
  const late = pressing.by({ device: otherWall }).press(GREEN + 71_001, 'trackCall.1', {})
  const { problems } = pressing.state()
  expect(problems.map(({ kind, entries }) => [kind, entries.at(-1)])).toEqual([
    ['alreadySo', again],
    ['alreadySo', late],
  ])
})

test('L15: a correction splits a second witness off again', () => {
  const pressing = running()
  pressing.by({ device: wall }).press(GREEN + 60_000, 'faultNoted.1', { fault: 'Braid' })
  const other = { device: phone }
  const target = pressing.by(other).press(GREEN + 62_000, 'faultNoted.1', { fault: 'Braid' })
  const change = { what: 'replace', apart: true } as const
  pressing.press(GREEN + 90_000, 'correction.1', { target, basedOn: target, change, reason: 'Two' })
  expect(pressing.state().car.faults).toHaveLength(2)
})

test('L16: handovers with other moves are no witnesses, the later one holds', () => {
  const pressing = running()
  pressing.by({ device: wall }).press(GREEN + 60_000, 'handover.1', { moves: okelloDrives })
  const other: Move[] = [{ person: PEOPLE.Tamsin, duty: 'controller' }]
  pressing.by({ device: otherWall }).press(GREEN + 63_000, 'handover.1', { moves: other })
  const open = pressing.state().people.duties.filter((span) => span.toAt === undefined)
  expect(open.find((span) => span.duty === 'controller')?.person).toBe(PEOPLE.Tamsin)
})

test('L16: a car going out with other moves is no witness, its moves hold', () => {
  const pressing = running()
  pressing.press(GREEN + 60_000, 'stopIn.1', { moment: 'stopped' })
  const out = { moment: 'leaving' } as const
  pressing.by({ device: wall }).press(GREEN + 110_000, 'stopOut.1', { ...out, moves: okelloDrives })
  const moves: Move[] = [{ person: PEOPLE.Tamsin, duty: 'controller' }]
  pressing.by({ device: otherWall }).press(GREEN + 112_000, 'stopOut.1', { ...out, moves })
  const state = pressing.state()
  expect(state.car.stops).toMatchObject([{ moments: { leaving: { at: GREEN + 110_000 } } }])
  const open = state.people.duties.filter((span) => span.toAt === undefined)
  expect(open.find((span) => span.duty === 'controller')?.person).toBe(PEOPLE.Tamsin)
  expect(problemKinds(state)).toEqual(['alreadySo'])
})
