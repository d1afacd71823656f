/** The contract's part about the wall on a crew device. */
import { expect } from 'vitest'
import type { ChangeDevice } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'
import {
  anEntry,
  anId,
  invited,
  joined,
  meetingOf,
  NOW_MS,
  type Bench,
  type Cases,
  type JoinedDevice,
} from './contract-bench.ts'

export const WALL_CASES: Cases = {
  'S70 a crew device takes the wall only where the captain has let it': async (bench) => {
    const { phone, meeting, other } = await crewPhone(bench)
    expect(await take(phone, meeting)).toEqual({ refused: 'wallNotGiven' })
    await change(phone, { mayTakeWallIn: meeting })
    expect(await take(phone, other)).toEqual({ refused: 'wallNotGiven' })
    expect(await take(phone, meeting)).toMatchObject({
      device: { role: 'crew', wall: { meeting, takenAt: 1_000_000 } },
    })
    expect(await bench.storage.read.wallTakenIn(phone.team, meeting)).toMatchObject([
      { id: phone.id },
    ])
    expect(await bench.storage.read.wallTakenIn(phone.team, other)).toEqual([])
  },

  'S71 with it, it records as the wall, in that meeting alone, until it is taken back': async (
    bench,
  ) => {
    const { phone, meeting, other } = await crewPhone(bench)
    await change(phone, { mayTakeWallIn: meeting })
    expect(await press(phone, meeting, 1)).toEqual(['roleMayNot'])
    await take(phone, meeting)
    expect(await press(phone, meeting, 2)).toEqual(['pitWall'])
    expect(await press(phone, other, 3)).toEqual(['roleMayNot'])
    // Read in the transaction of the append itself.
    const [, answered] = await Promise.all([giveBack(phone, meeting), press(phone, meeting, 4)])
    expect(answered).toEqual(['roleMayNot'])
    expect(await bench.storage.read.wallTakenIn(phone.team, meeting)).toEqual([])
  },

  'S72 it is taken once however often it is pressed, and may be taken again': async (bench) => {
    const { phone, meeting } = await crewPhone(bench)
    await change(phone, { mayTakeWallIn: meeting })
    await take(phone, meeting)
    const later = { ...phone.sends, meeting, nowMs: NOW_MS + 500 }
    const taken = { device: { wall: { takenAt: 1_000_000 } } }
    expect(await bench.storage.run('takeWall', later)).toMatchObject(taken)
    await giveBack(phone, meeting)
    expect(await giveBack(phone, meeting)).toMatchObject({ device: { wall: { meeting } } })
    expect(await take(phone, meeting)).toMatchObject(taken)
  },

  'S73 it is gone with the permission, with another role, and when the device is taken out': async (
    bench,
  ) => {
    const { phone, meeting } = await crewPhone(bench)
    const taken = () => bench.storage.read.wallTakenIn(phone.team, meeting)
    const ends: ChangeDevice[] = [{ mayTakeWallIn: null }, { role: 'viewer' }, { revoked: true }]
    for (const end of ends) {
      await change(phone, { role: 'crew', mayTakeWallIn: null })
      await change(phone, { mayTakeWallIn: meeting })
      await take(phone, meeting)
      expect(await taken()).toHaveLength(1)
      await change(phone, end)
      expect(await taken(), JSON.stringify(end)).toEqual([])
    }
    expect(await take(phone, meeting)).toEqual({ refused: 'revoked' })
  },

  'S74 a device that joins again keeps it, one that was taken out does not': async (bench) => {
    const { phone, meeting } = await crewPhone(bench)
    await change(phone, { mayTakeWallIn: meeting })
    expect(await again(phone, phone.tokenHash, 'second')).toMatchObject({ wall: { meeting } })
    await change(phone, { revoked: true })
    expect(await again(phone, 'second', 'third')).not.toHaveProperty('wall')
  },

  'S75 only crew take it, and only in a meeting of the team': async (bench) => {
    const { phone, meeting } = await crewPhone(bench)
    await change(phone, { role: 'viewer' })
    await change(phone, { mayTakeWallIn: meeting })
    expect(await take(phone, meeting)).toEqual({ refused: 'wallNotGiven' })
    expect(await change(phone, { mayTakeWallIn: anId() })).toEqual({ refused: 'otherMeeting' })
  },
}

async function crewPhone(bench: Bench, role: Role = 'crew') {
  const phone = await joined(bench, { role })
  const [meeting, other] = [await meetingOf(bench, phone.team), await meetingOf(bench, phone.team)]
  return { phone, meeting, other }
}

function change({ bench, team, id }: JoinedDevice, what: ChangeDevice) {
  return bench.storage.run('changeDevice', { team, device: id, change: what, nowMs: NOW_MS })
}

function take({ bench, sends }: JoinedDevice, meeting: string) {
  return bench.storage.run('takeWall', { ...sends, meeting })
}

function giveBack({ bench, sends }: JoinedDevice, meeting: string) {
  return bench.storage.run('returnWall', { ...sends, meeting })
}

/** A press only the wall may make: the role it was recorded with, or why not. */
async function press({ bench, id, sends }: JoinedDevice, meeting: string, n: number) {
  const entries = [anEntry({ device: id, n })]
  const { results } = await bench.storage.run('append', { ...sends, meeting, entries })
  return results.map((result) => ('refusal' in result ? result.refusal : result.role))
}

async function again({ bench, team, id }: JoinedDevice, cameWithHash: string, tokenHash: string) {
  const codeHash = await invited(bench, { team, role: 'crew', kind: 'qr' })
  const join = { codeHash, device: id, name: 'A phone', tokenHash, cameWithHash, nowMs: NOW_MS }
  const answer = await bench.storage.run('join', join)
  return 'joined' in answer ? answer.joined.device : answer
}
