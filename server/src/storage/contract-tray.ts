/** The contract's part about what revoked devices leave behind. */
import type { DecideTray } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'
import { expect } from 'vitest'
import {
  anEntry,
  anId,
  joined,
  meetingOf,
  NOW_MS,
  type Bench,
  type Cases,
  type JoinedDevice,
} from './contract-bench.ts'
import type { News } from './port.ts'

export const TRAY_CASES: Cases = {
  'S80 what is taken in stands in the log as the device’s own, with the role it had': async (
    bench,
  ) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const told: News[] = []
    bench.storage.onNews((news) => told.push(news))
    const first = anEntry({ device: lost.id, n: 7, at: 990_000 })
    const second = anEntry({ device: lost.id, n: 8, at: 995_000 })
    await leftBehind(lost, meeting, [second, first])
    const { results } = await bench.storage.run('takeIn', decision(lost, meeting, [second, first]))
    expect(results).toMatchObject([
      { outcome: 'recorded', id: first.id, seq: 1, role: 'pitWall' },
      { outcome: 'recorded', id: second.id, seq: 2, role: 'pitWall' },
    ])
    const log = [
      { ...first, seq: 1, recordedAt: 1_000_000, role: 'pitWall' },
      { ...second, seq: 2, recordedAt: 1_000_000, role: 'pitWall' },
    ]
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual(log)
    expect(told).toEqual([{ meeting, from: 0, to: 2, entries: log }])
    const decided = { what: 'takenIn', at: 1_000_000 }
    expect(await bench.storage.read.tray(lost.team)).toMatchObject([{ decided }, { decided }])
  },

  'S81 taken in twice it is there once, and that is success': async (bench) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const entry = anEntry({ device: lost.id, n: 1 })
    await leftBehind(lost, meeting, [entry])
    const input = decision(lost, meeting, [entry])
    await bench.storage.run('takeIn', input)
    expect(await bench.storage.run('takeIn', input)).toMatchObject({
      results: [{ outcome: 'duplicate', seq: 1 }],
    })
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toHaveLength(1)
  },

  'S82 what is left aside stays in the tray, marked, and may be taken in later': async (bench) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const [one, other] = [anEntry({ device: lost.id, n: 1 }), anEntry({ device: lost.id, n: 2 })]
    await leftBehind(lost, meeting, [one, other])
    const left = await bench.storage.run('leaveAside', decision(lost, meeting, [one]))
    expect(left).toEqual({ left: [one.id] })
    // Undecided first.
    expect(await bench.storage.read.tray(lost.team)).toMatchObject([
      { entry: other },
      { entry: one, decided: { what: 'leftAside', at: 1_000_000 } },
    ])
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual([])
    await bench.storage.run('takeIn', decision(lost, meeting, [one]))
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toMatchObject([one])
  },

  'S83 what the log has is not left aside any more': async (bench) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const entry = anEntry({ device: lost.id, n: 1 })
    await leftBehind(lost, meeting, [entry])
    await bench.storage.run('takeIn', decision(lost, meeting, [entry]))
    const left = await bench.storage.run('leaveAside', decision(lost, meeting, [entry]))
    expect(left).toEqual({ left: [] })
    expect(await bench.storage.read.tray(lost.team)).toMatchObject([
      { decided: { what: 'takenIn' } },
    ])
  },

  'S84 one that cannot be taken says why, stays undecided, and holds up no other': async (
    bench,
  ) => {
    const { lost, meeting } = await revoked(bench, 'crew')
    const mayNot = anEntry({ device: lost.id, n: 1 })
    const fine = anEntry({ device: lost.id, n: 2, kind: 'note.1', body: '{"words":"fine"}' })
    await leftBehind(lost, meeting, [mayNot, fine])
    const nobodys = anEntry({ device: lost.id, n: 3 })
    const input = decision(lost, meeting, [mayNot, fine, nobodys])
    expect(await bench.storage.run('takeIn', input)).toMatchObject({
      results: [
        { outcome: 'refused', id: mayNot.id, refusal: 'roleMayNot' },
        { outcome: 'recorded', id: fine.id, role: 'crew' },
        { outcome: 'refused', id: nobodys.id, refusal: 'notFound' },
      ],
    })
    const lines = await bench.storage.read.tray(lost.team)
    expect(lines.map(({ decided }) => decided?.what)).toEqual([undefined, 'takenIn'])
  },

  'S85 the role it had counts, not the one it is invited with again': async (bench) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const entry = anEntry({ device: lost.id, n: 1 })
    await leftBehind(lost, meeting, [entry])
    await bench.storage.run('changeDevice', change(lost, { role: 'viewer' }))
    expect(await bench.storage.run('takeIn', decision(lost, meeting, [entry]))).toMatchObject({
      results: [{ outcome: 'recorded', role: 'pitWall' }],
    })
  },

  'S86 another team decides on nothing of it': async (bench) => {
    const { lost, meeting } = await revoked(bench, 'pitWall')
    const entry = anEntry({ device: lost.id, n: 1 })
    await leftBehind(lost, meeting, [entry])
    const input = { ...decision(lost, meeting, [entry]), team: anId() }
    expect(await bench.storage.run('leaveAside', input)).toEqual({ left: [] })
    expect((await bench.storage.run('takeIn', input)).results).toMatchObject([
      { outcome: 'refused' },
    ])
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual([])
  },
}

async function revoked(bench: Bench, role: Role) {
  const lost = await joined(bench, { role })
  const meeting = await meetingOf(bench, lost.team)
  await bench.storage.run('changeDevice', change(lost, { revoked: true }))
  return { lost, meeting }
}

function change(of: JoinedDevice, what: { role?: Role; revoked?: true }) {
  return { team: of.team, device: of.id, change: what, nowMs: NOW_MS }
}

async function leftBehind(
  { bench, sends }: JoinedDevice,
  meeting: string,
  entries: readonly ReturnType<typeof anEntry>[],
) {
  await bench.storage.run('append', { ...sends, meeting, entries })
}

function decision(
  { team, id }: JoinedDevice,
  meeting: string,
  entries: readonly { readonly id: string }[],
) {
  const asked: DecideTray = { meeting, device: id, entries: entries.map((entry) => entry.id) }
  return { ...asked, team, nowMs: NOW_MS }
}
