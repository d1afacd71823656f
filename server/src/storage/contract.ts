/** What every database behind the storage port has to do. `storageContract` runs it on one; add another in its own test. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { ACCESS_CASES } from './contract-access.ts'
import { anEntry, anId, joined, meetingOf, type Bench, type Cases } from './contract-bench.ts'
import { COPY_CASES } from './contract-copies.ts'
import { DOCUMENT_CASES } from './contract-documents.ts'
import { LOG_CASES } from './contract-log.ts'
import { TRAY_CASES } from './contract-tray.ts'
import { WALL_CASES } from './contract-wall.ts'

/** Some take hundreds of transactions, and the machine may be busy. */
const PATIENCE_MS = 120_000

/** `open` opens a new, empty store each time. */
export function storageContract(name: string, open: () => Promise<Bench>): void {
  describe(`storage on ${name}`, () => {
    let bench: Bench
    beforeEach(async () => {
      bench = await open()
    })
    afterEach(async () => {
      await bench.close()
    })

    const cases = {
      ...{ ...STORE_CASES, ...LOG_CASES, ...ACCESS_CASES, ...DOCUMENT_CASES },
      ...{ ...TRAY_CASES, ...WALL_CASES, ...COPY_CASES },
    }
    for (const [title, holds] of Object.entries(cases)) {
      test(title, { timeout: PATIENCE_MS }, () => holds(bench))
    }
  })
}

const STORE_CASES: Cases = {
  'S1 what was answered is there after the store was closed and opened again': async (bench) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    // Every kind of text JSON can hold: escapes, blanks, an emoji, a line separator.
    const body = '{ "words":"Ünïcode 🏁 \\u00e9\\n\u2028",\n "about" : null }'
    const entry = anEntry({ device: device.id, n: 1, kind: 'somethingLater.7', body })
    await bench.storage.run('append', { ...device.sends, meeting, entries: [entry] })
    await bench.reopen()
    const [read] = await bench.storage.read.entriesAfter(meeting, 0)
    expect(read).toEqual({ ...entry, seq: 1, recordedAt: 1_000_000, role: 'pitWall' })
  },

  'S2 a command that fails is answered with its fault, and its neighbours are written': async (
    bench,
  ) => {
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    const invite = {
      team: device.team,
      role: 'crew',
      kind: 'qr',
      validUntil: 9e6,
      nowMs: 0,
    } as const
    const codeHash = anId()
    const entry = anEntry({ device: device.id, n: 1 })
    const outcomes = await Promise.allSettled([
      bench.storage.run('makeInvite', { ...invite, codeHash }),
      bench.storage.run('makeInvite', { ...invite, codeHash }),
      bench.storage.run('append', { ...device.sends, meeting, entries: [entry] }),
    ])
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled'])
    expect(await bench.storage.read.entriesAfter(meeting, 0)).toHaveLength(1)
  },

  'S3 the mark of server time only rises within an epoch, and the captain may set it back': async (
    bench,
  ) => {
    await bench.storage.run('keepTime', { markMs: 5_000, shiftMs: 0, epoch: 1 })
    await bench.storage.run('raiseMark', { markMs: 7_000, epoch: 1 })
    await bench.storage.run('raiseMark', { markMs: 6_000, epoch: 1 })
    expect(await bench.storage.read.keptTime()).toEqual({ markMs: 7_000, shiftMs: 0, epoch: 1 })
    await bench.storage.run('keepTime', { markMs: 2_000, shiftMs: -5_000, epoch: 2 })
    await bench.storage.run('raiseMark', { markMs: 8_000, epoch: 1 })
    expect(await bench.storage.read.keptTime()).toEqual({
      markMs: 2_000,
      shiftMs: -5_000,
      epoch: 2,
    })
  },
}
