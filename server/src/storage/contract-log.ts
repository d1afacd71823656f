/** The log's part of the contract: numbers, repetitions, refusals, news. */
import { expect } from 'vitest'
import {
  anEntry,
  anId,
  joined,
  meetingOf,
  type Cases,
  type JoinedDevice,
} from './contract-bench.ts'
import type { News } from './port.ts'

const append = async (
  device: JoinedDevice,
  meeting: string,
  entries: readonly ReturnType<typeof anEntry>[],
) => (await device.bench.storage.run('append', { ...device.sends, meeting, entries })).results
const outcomes = async (...given: Parameters<typeof append>) =>
  (await append(...given)).map((result) =>
    result.outcome === 'refused' ? result.refusal : `${result.outcome} ${String(result.seq)}`,
  )

export const LOG_CASES: Cases = {
  'S10 every meeting counts its own entries 1, 2, 3': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const [one, two] = [await meetingOf(bench, device.team), await meetingOf(bench, device.team)]
    const entries = [1, 2, 3].map((n) => anEntry({ device: device.id, n }))
    expect(await outcomes(device, one, entries.slice(0, 2))).toEqual(['recorded 1', 'recorded 2'])
    expect(await outcomes(device, two, entries.slice(2))).toEqual(['recorded 1'])
    expect(await bench.storage.read.meeting(device.team, one)).toMatchObject({ lastSeq: 2 })
  },

  'S11 an entry sent again is answered with its first place and burns no number': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const [a, b] = [anEntry({ device: device.id, n: 1 }), anEntry({ device: device.id, n: 2 })]
    await append(device, meeting, [a])
    expect(await outcomes(device, meeting, [a, a, b, b])).toEqual([
      'duplicate 1',
      'duplicate 1',
      'recorded 2',
      'duplicate 2',
    ])
  },

  'S12 the same id with another body is refused, and the first stands': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const first = anEntry({ device: device.id, n: 1, kind: 'note.1', body: '{"words":"first"}' })
    await append(device, meeting, [first])
    const others = [{ body: '{"words": "first"}' }, { at: 998_000 }, { n: 9 }, { kind: 'note.2' }]
    for (const other of others) {
      expect(await outcomes(device, meeting, [{ ...first, ...other }])).toEqual(['otherBody'])
    }
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toMatchObject([first])
  },

  'S13 the same entry in another meeting is another entry': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const [one, copy] = [await meetingOf(bench, device.team), await meetingOf(bench, device.team)]
    const entry = anEntry({ device: device.id, n: 1 })
    expect(await outcomes(device, one, [entry])).toEqual(['recorded 1'])
    expect(await outcomes(device, copy, [entry])).toEqual(['recorded 1'])
  },

  'S14 the role counts that the device has when its entries are written': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const change = { team: device.team, device: device.id, nowMs: 0 }
    const [demoted, answered] = await Promise.all([
      bench.storage.run('changeDevice', { ...change, change: { role: 'viewer' } }),
      append(device, meeting, [anEntry({ device: device.id, n: 1 })]),
    ])
    expect(demoted).toMatchObject({ device: { role: 'viewer' } })
    expect(answered).toMatchObject([{ outcome: 'refused', refusal: 'roleMayNot' }])
  },

  'S15 a crew’s device undoes its own entry and nobody else’s': async (bench) => {
    const wall = await joined(bench, { role: 'pitWall' })
    const crew = await joined(bench, { role: 'crew' })
    const meeting = await meetingOf(bench, wall.team)
    const [theirs, own] = [anEntry({ device: wall.id, n: 1 }), incidentOf(crew, 1)]
    await append(wall, meeting, [theirs])
    const voids = [voidOf(crew, 2, own.id), voidOf(crew, 3, theirs.id)]
    expect(await outcomes(crew, meeting, [own, ...voids])).toEqual([
      'recorded 2',
      'recorded 3',
      'roleMayNot',
    ])
  },

  'S16 entries of a revoked device go to the tray, each once': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const change = {
      team: device.team,
      device: device.id,
      change: { revoked: true },
      nowMs: 0,
    } as const
    await bench.storage.run('changeDevice', change)
    const entry = anEntry({ device: device.id, n: 1 })
    expect(await outcomes(device, meeting, [entry])).toEqual(['revoked'])
    expect(await outcomes(device, meeting, [entry])).toEqual(['revoked'])
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toEqual([])
    expect(await bench.storage.read.tray(device.team)).toEqual([
      {
        ...{ id: entry.id, meeting, device: device.id, name: 'A device', role: 'pitWall' },
        ...{ receivedAt: 1_000_000, entry },
      },
    ])
  },

  'S17 a meeting of nobody’s, or of another team, takes nothing': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const entry = anEntry({ device: device.id, n: 1 })
    expect(await outcomes(device, anId(), [entry])).toEqual(['otherMeeting'])
    const stranger = { ...device, sends: { ...device.sends, team: anId() } }
    expect(await outcomes(stranger, await meetingOf(bench, device.team), [entry])).toEqual([
      'notJoined',
    ])
  },

  'S18 many at once are numbered without a gap, and the news tells each of them once, in order':
    async (bench) => {
      const device = await joined(bench, { role: 'pitWall' })
      const meeting = await meetingOf(bench, device.team)
      const told: News[] = []
      bench.storage.onNews((news) => told.push(news))
      const ns = Array.from({ length: 300 }, (_, index) => index + 1)
      const answers = await Promise.all(
        ns.map((n) => outcomes(device, meeting, [anEntry({ device: device.id, n })])),
      )
      expect(answers.flat()).toEqual(ns.map((n) => `recorded ${String(n)}`))
      expect(told.flatMap(({ entries }) => entries.map(({ seq }) => seq))).toEqual(ns)
      expect(told.map(({ from }) => from)).toEqual([0, ...told.slice(0, -1).map(({ to }) => to)])
    },

  'S19 the log is read in pages of 500': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const entries = Array.from({ length: 501 }, (_, index) =>
      anEntry({ device: device.id, n: index + 1 }),
    )
    await append(device, meeting, entries)
    const { read } = bench.storage
    expect((await read.entriesAfter(meeting, 0)).map(({ seq }) => seq).at(-1)).toBe(500)
    expect((await read.entriesAfter(meeting, 500)).map(({ seq }) => seq)).toEqual([501])
  },

  'S20 what a meeting records is dated in meeting time': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const id = anId()
    const fictional = { rate: 10, startsAtMs: 50_000 }
    const meeting = { id, name: 'A meeting that nobody holds', fictional }
    await bench.storage.run('createMeeting', { team: device.team, meeting, nowMs: 999_000 })
    // 50,000 + (1,000,000 − 999,000) × 10
    expect(await append(device, id, [anEntry({ device: device.id, n: 1 })])).toMatchObject([
      { recordedAt: 60_000 },
    ])
  },
}

function incidentOf(device: JoinedDevice, n: number) {
  return anEntry({ device: device.id, n, kind: 'incident.1', body: '{"what":"deSlot"}' })
}

function voidOf(device: JoinedDevice, n: number, target: string) {
  const body = JSON.stringify({ target, basedOn: target, change: { what: 'void' }, reason: 'Undo' })
  return anEntry({ device: device.id, n, kind: 'correction.1', body })
}
