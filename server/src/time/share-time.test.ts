/**
 * Two processes, a database's clock that a test turns by hand, and the one row both keep their time in.
 * T10 A process that starts beside another goes by its time, not by the machine's clock.
 * T11 One that starts alone starts as over a file.
 * T12 The clock that one sets is the other's from its next look on.
 * T13 Nobody follows where the database's clock is moved, and who starts later agrees with those who were there.
 * T14 A process that stood still while the others went on joins them again.
 * T15 The mark rises by whoever finds it old.
 */
import { expect, test } from 'vitest'
import type { KeptTime } from '../storage/commands/server-time.ts'
import type { Neighbours, Storage, Word } from '../storage/port.ts'
import { ServerTime } from './server-time.ts'
import { lookAtTime, startSharedTime } from './share-time.ts'

const HOUR = 3_600_000
const NOON = Date.UTC(2030, 5, 1, 12)

/** The database as far as time goes: its clock, and the row. */
function aDatabase(wallMs: number) {
  const database = { wallMs, monotonicMs: 0, row: undefined as KeptTime | undefined }
  return {
    database,
    pass: (ms: number) => {
      database.wallMs += ms
      database.monotonicMs += ms
    },
    step: (ms: number) => (database.wallMs += ms),
    process: async () => {
      const still = { ms: 0 }
      const clocks = {
        wall: () => database.wallMs,
        monotonic: () => database.monotonicMs - still.ms,
        shared: true as const,
      }
      const neighbours: Neighbours = {
        ...{ process: 'p', clocks, boundMs: () => 0 },
        ...{ say: (_word: Word) => undefined, onWord: () => undefined },
        look: () => Promise.resolve(database.row),
      }
      const storage = { run: keepIn(database) } as unknown as Storage
      const time = await startSharedTime(storage, neighbours)
      const told: string[] = []
      const parts = { time, storage, neighbours, log: { warn: (text: string) => told.push(text) } }
      const look = () => lookAtTime({ ...parts, tellClock: () => told.push('clock') })
      return { time, look, told, standStill: (ms: number) => (still.ms += ms), storage }
    },
  }
}

/** As the commands do it: the mark only rises within an epoch, and no earlier epoch comes back. */
function keepIn(database: { row: KeptTime | undefined }) {
  return (name: string, kept: KeptTime) => {
    const { row } = database
    if (name === 'keepTime' && kept.epoch >= (row?.epoch ?? 0)) database.row = kept
    if (name === 'raiseMark' && row?.epoch === kept.epoch) {
      database.row = { ...row, markMs: Math.max(row.markMs, kept.markMs) }
    }
    return Promise.resolve('done')
  }
}

test('T10 a second process takes over the time of the first', async () => {
  const { database, process, pass, step } = aDatabase(NOON)
  const first = await process()
  step(HOUR)
  await first.look()
  pass(2_000)
  await first.look()
  const second = await process()
  expect(first.time.now()).toBe(NOON + 2_000)
  expect(second.time.now()).toBe(NOON + 2_000)
  // The database's clock says one o'clock and two seconds.
  expect(database.row).toMatchObject({ aheadMs: -HOUR })
})

test('T11 alone, it goes by the machine’s clock, and never below its mark', async () => {
  const { database, process } = aDatabase(NOON)
  database.row = { markMs: NOON - HOUR, shiftMs: 0, epoch: 3, aheadMs: 7 * HOUR }
  const late = await process()
  expect([late.time.now(), late.time.epoch]).toEqual([NOON, 3])
  database.row = { markMs: NOON + HOUR, shiftMs: 0, epoch: 3 }
  const behind = await process()
  expect(behind.time.now()).toBe(NOON + HOUR)
  expect(behind.time.standing().doubt).toMatchObject({ why: 'behindItsMark' })
})

test('T12 what a captain sets at one is set at the other, and screens are told', async () => {
  const { process, pass } = aDatabase(NOON)
  const [one, other] = [await process(), await process()]
  const kept = one.time.settled(-HOUR)
  await one.storage.run('keepTime', kept)
  one.time.settle(-HOUR, kept)
  pass(1_000)
  await other.look()
  expect([other.time.now(), other.time.epoch]).toEqual([NOON - HOUR + 1_000, 2])
  expect(other.told).toEqual(['clock'])
  await other.look()
  expect(other.told).toEqual(['clock'])
})

test('T13 a step of the database’s clock is followed by nobody, whoever sees it first', async () => {
  const { database, process, pass, step } = aDatabase(NOON)
  const [one, other] = [await process(), await process()]
  step(-HOUR)
  pass(1_000)
  await one.look()
  await other.look()
  pass(1_000)
  await one.look()
  await other.look()
  const later = await process()
  const times = [one, other, later].map(({ time }) => time.now())
  expect(times).toEqual([NOON + 2_000, NOON + 2_000, NOON + 2_000])
  expect(database.row).toMatchObject({ aheadMs: HOUR, epoch: 1 })
  expect(one.told.join()).toMatch(/moved by -3600000 ms/)
})

test('T14 one that stood still for a while goes by the others’ time again', async () => {
  const { process, pass } = aDatabase(NOON)
  const [one, other] = [await process(), await process()]
  pass(60_000)
  other.standStill(60_000)
  await one.look()
  expect(other.time.now()).toBe(NOON)
  await other.look()
  expect(other.time.now()).toBe(NOON + 60_000)
})

test('T15 a mark that another has just raised is left as it is', async () => {
  const { database, process, pass } = aDatabase(NOON)
  const [one, other] = [await process(), await process()]
  pass(1_000)
  await one.look()
  expect(database.row?.markMs).toBe(NOON + 1_000)
  pass(500)
  await other.look()
  expect(database.row?.markMs).toBe(NOON + 1_000)
  // 501 ms old: more than half of the second after which it is looked at again.
  pass(1)
  await other.look()
  expect(database.row?.markMs).toBe(NOON + 1_501)
})

test('T12 a time that is not shared keeps no distance to the machine’s clock', () => {
  const time = new ServerTime({ wall: () => NOON, monotonic: () => 0 }, undefined)
  expect(time.kept()).toEqual({ markMs: NOON, shiftMs: 0, epoch: 1 })
})
