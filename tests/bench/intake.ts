/**
 * Durable entries taken in: from JSON as it comes off the wire to the answer, with envelope and body checked,
 * duplicates looked for and numbers given, against bare better-sqlite3 inserting rows that are ready, in the same
 * table, with the same batches, a transaction and a sync a batch. In turns; each figure the median of five runs.
 */
import Database from 'better-sqlite3'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { appendSchema } from '@pitlamp/contract'
import { ENVELOPE_VERSION, type Entry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import { openSqlite } from '../../server/src/storage/sqlite/open.ts'
import type { Storage } from '../../server/src/storage/port.ts'
import type { Holder } from '../../server/src/storage/reads/access.ts'
import { takeEntries } from '../../server/src/sync/intake.ts'
import { ServerTime, SYSTEM_CLOCKS } from '../../server/src/time/server-time.ts'
import { insertInto, makeTables } from './load/entry-table.ts'
import { median, rounded, type Row } from './row.ts'

const RUNS = 5
const RUN_MS = 1_500
const BATCHES = [1, 8, 50]
const GOAL_RATIO = 0.6

export async function bench(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-intake-'))
  const bare = new Database(join(folder, 'bare.db'))
  await makeTables(bare)
  const ours = await openOurs(join(folder, 'pitlamp.db'))
  try {
    const rows: Row[] = []
    for (const size of BATCHES) rows.push(await measure(size, { ours, bare }))
    return rows
  } finally {
    await ours.storage.close()
    bare.close()
    rmSync(folder, { recursive: true })
  }
}

interface Ours {
  readonly storage: Storage
  readonly time: ServerTime
  readonly holder: Holder
  readonly meeting: string
}

async function openOurs(file: string): Promise<Ours> {
  const time = new ServerTime(SYSTEM_CLOCKS, undefined)
  const storage = await openSqlite({ file, mark: () => time.kept() })
  const nowMs = time.now()
  const { team } = await storage.run('foundTeam', { id: uuidV7(), name: 'Bench', nowMs })
  await storage.run('keepTime', time.kept())
  const invite = { team, codeHash: 'code', role: 'pitWall', kind: 'qr', nowMs } as const
  await storage.run('makeInvite', { ...invite, validUntil: nowMs + 1e6 })
  const device = { device: uuidV7(), name: 'Bench', codeHash: 'code', tokenHash: 'token', nowMs }
  await storage.run('join', device)
  const meeting = uuidV7()
  await storage.run('createMeeting', { team, meeting: { id: meeting, name: 'Bench' }, nowMs })
  const holder = await storage.read.holderOf('token')
  if (!holder) throw new Error('The device has joined.')
  return { storage, time, holder, meeting }
}

async function measure(
  size: number,
  { ours, bare }: { ours: Ours; bare: Database.Database },
): Promise<Row> {
  const [taken, inserted]: [number[], number[]] = [[], []]
  for (let run = 0; run < RUNS; run += 1) {
    taken.push(await takeFor(size, ours))
    inserted.push(await insertFor(size, bare))
  }
  const [value, baseline] = [median(taken), median(inserted)]
  return {
    figure: `durable entries taken in, ${size} a batch (baseline: bare better-sqlite3)`,
    value: Math.round(value),
    unit: 'entries/s',
    baseline: Math.round(baseline),
    ratio: rounded(value / baseline),
    goal: `at least ${GOAL_RATIO} ×`,
    met: value / baseline >= GOAL_RATIO,
  }
}

let n = 0

function entryOf(device: string): Entry {
  n += 1
  return {
    ...{ v: ENVELOPE_VERSION, id: uuidV7(), device, n, at: Date.now(), atBoundMs: 20, epoch: 1 },
    kind: 'incident.1',
    body: JSON.stringify({ what: 'deSlot', where: 'Bank before the bridge' }),
  }
}

/** One batch is under way at a time, as from one outbox. Making the load is not counted. */
async function takeFor(size: number, { storage, time, holder, meeting }: Ours): Promise<number> {
  let [spentMs, batches] = [0, 0]
  while (spentMs < RUN_MS) {
    const entries = Array.from({ length: size }, () => entryOf(holder.device.id))
    const wire = JSON.stringify({ meeting, entries })
    await nextTurn()
    const startedAt = performance.now()
    const append = appendSchema.parse(JSON.parse(wire))
    const answer = await takeEntries({ storage, time }, holder, append)
    spentMs += performance.now() - startedAt
    batches += 1
    if (!('ok' in answer) || answer.ok.results.some(({ outcome }) => outcome !== 'recorded')) {
      throw new Error('Every entry of the bench is taken.')
    }
  }
  return (batches * size * 1000) / spentMs
}

let seq = 0

async function insertFor(size: number, bare: Database.Database): Promise<number> {
  const insert = insertInto(bare)
  const insertAll = bare.transaction((rows: readonly object[]) => {
    for (const row of rows) insert(row)
  })
  let [spentMs, batches] = [0, 0]
  while (spentMs < RUN_MS) {
    const rows = Array.from({ length: size }, () => ({ ...entryOf('bare'), seq: ++seq }))
    await nextTurn()
    const startedAt = performance.now()
    insertAll(rows)
    spentMs += performance.now() - startedAt
    batches += 1
  }
  return (batches * size * 1000) / spentMs
}
