/** The contract's part about codes and devices. */
import { expect } from 'vitest'
import { anId, invited, joined, NOW_MS, type Bench, type Cases } from './contract-bench.ts'
import type { Ticket } from './commands/access.ts'

const join = (
  bench: Bench,
  codeHash: string,
  more: { device?: string; cameWithHash?: string; ticket?: Ticket; nowMs?: number } = {},
) =>
  bench.storage.run('join', {
    device: anId(),
    name: 'Another device',
    tokenHash: anId(),
    nowMs: NOW_MS,
    ...more,
    codeHash,
  })
const refused = { refused: 'codeUnknown' }

export const ACCESS_CASES: Cases = {
  'S30 the first team is made once': async (bench) => {
    const first = await bench.storage.run('foundTeam', { id: anId(), name: 'Our team', nowMs: 0 })
    expect(await bench.storage.run('foundTeam', { id: anId(), name: 'Another', nowMs: 1 })).toEqual(
      first,
    )
  },

  'S31 a QR lets in any number of devices until it ends': async (bench) => {
    const { team } = await joined(bench, { role: 'captain' })
    const code = await invited(bench, { team, role: 'crew', kind: 'qr' })
    expect(await join(bench, code)).toMatchObject({ joined: { device: { role: 'crew' } } })
    expect(await join(bench, code)).toMatchObject({ joined: { team: { id: team } } })
    // Valid until NOW_MS + 1,000.
    expect(await join(bench, code, { nowMs: NOW_MS + 1_001 })).toEqual(refused)
  },

  'S32 a typed code lets in one device, even when two ask at once': async (bench) => {
    const { team } = await joined(bench, { role: 'captain' })
    const code = await invited(bench, { team, role: 'crew', kind: 'typed' })
    const both = await Promise.all([join(bench, code), join(bench, code)])
    expect(both.filter((answer) => 'joined' in answer)).toHaveLength(1)
  },

  'S33 a code nobody made lets in nobody': async (bench) => {
    expect(await join(bench, anId())).toEqual(refused)
  },

  'S34 a device that joins again needs its old token and never loses its role': async (bench) => {
    const captain = await joined(bench, { role: 'captain' })
    const code = await invited(bench, { team: captain.team, role: 'viewer', kind: 'qr' })
    expect(await join(bench, code, { device: captain.id })).toMatchObject({
      refused: 'otherDevice',
    })
    const again = await join(bench, code, { device: captain.id, cameWithHash: captain.tokenHash })
    expect(again).toMatchObject({ joined: { device: { role: 'captain' } } })
    expect(await bench.storage.read.holderOf(captain.tokenHash)).toBeUndefined()
  },

  'S35 a revoked device that is invited again has the role of the invitation': async (bench) => {
    const device = await joined(bench, { role: 'captain' })
    const revoke = {
      team: device.team,
      device: device.id,
      change: { revoked: true },
      nowMs: 5,
    } as const
    await bench.storage.run('changeDevice', revoke)
    expect(await bench.storage.read.holderOf(device.tokenHash)).toMatchObject({
      device: { revokedAt: 5 },
    })
    const code = await invited(bench, { team: device.team, role: 'crew', kind: 'qr' })
    const again = await join(bench, code, { device: device.id, cameWithHash: device.tokenHash })
    expect(again).toMatchObject({ joined: { device: { role: 'crew' } } })
  },

  'S36 a ticket works once, and the first captain’s only while there is none': async (bench) => {
    const { team } = await bench.storage.run('foundTeam', {
      id: anId(),
      name: 'Our team',
      nowMs: 0,
    })
    const ticket: Ticket = {
      ...{ team, role: 'captain', validUntil: NOW_MS },
      ...{ simulator: false, onlyWithoutCaptain: true },
    }
    const code = anId()
    expect(await bench.storage.read.hasCaptain(team)).toBe(false)
    expect(await join(bench, code, { ticket })).toMatchObject({
      joined: { device: { role: 'captain' } },
    })
    expect(await bench.storage.read.hasCaptain(team)).toBe(true)
    expect(await join(bench, code, { ticket })).toEqual(refused)
    expect(await join(bench, anId(), { ticket })).toEqual(refused)
    const lost = { ...ticket, onlyWithoutCaptain: false }
    expect(await join(bench, anId(), { ticket: lost })).toMatchObject({ joined: {} })
  },

  'S37 the simulator’s device is no captain to anybody': async (bench) => {
    const { team } = await bench.storage.run('foundTeam', {
      id: anId(),
      name: 'Our team',
      nowMs: 0,
    })
    const ticket: Ticket = {
      ...{ team, role: 'captain', validUntil: NOW_MS },
      ...{ simulator: true, onlyWithoutCaptain: false },
    }
    await join(bench, anId(), { ticket })
    expect(await bench.storage.read.hasCaptain(team)).toBe(false)
  },

  'S38 a device is renamed, and one that does not exist is not found': async (bench) => {
    const device = await joined(bench, { role: 'crew' })
    const rename = { team: device.team, change: { name: 'Phone by the lamp' }, nowMs: 0 }
    await bench.storage.run('changeDevice', { ...rename, device: device.id })
    expect(await bench.storage.read.devices(device.team)).toMatchObject([
      { name: 'Phone by the lamp' },
    ])
    const nobody = await bench.storage.run('changeDevice', { ...rename, device: anId() })
    expect(nobody).toEqual({ refused: 'notFound' })
  },
}
