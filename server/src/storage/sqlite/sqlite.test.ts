import Database from 'better-sqlite3'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { anEntry, joined, meetingOf, type Bench } from '../contract-bench.ts'
import { storageContract } from '../contract.ts'
import { NotSaved, StoreInUse } from '../port.ts'
import { openSqlite, type SqliteOptions } from './open.ts'

const benches: SqliteBench[] = []

type SqliteBench = Bench & { readonly file: string }

async function open(forTests?: SqliteOptions['forTests']): Promise<SqliteBench> {
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-'))
  const file = join(folder, 'pitlamp.db')
  const options = { file, mark: () => ({ markMs: 0, epoch: 0 }), ...(forTests && { forTests }) }
  let storage = await openSqlite(options)
  const bench = {
    file,
    get storage() {
      return storage
    },
    async reopen() {
      await storage.close()
      storage = await openSqlite(options)
    },
    async close() {
      await storage.close()
      rmSync(folder, { recursive: true })
    },
  }
  return bench
}

async function opened(forTests?: SqliteOptions['forTests']): Promise<SqliteBench> {
  const bench = await open(forTests)
  benches.push(bench)
  return bench
}

storageContract('SQLite', open)

describe('a store in one file', () => {
  afterEach(async () => {
    for (const bench of benches.splice(0)) await bench.close()
  })

  test('F1 a second one on the same file does not open, and does once the first is closed', async () => {
    const bench = await opened()
    const again = () => openSqlite({ file: bench.file, mark: () => ({ markMs: 0, epoch: 0 }) })
    await expect(again()).rejects.toThrow(StoreInUse)
    await expect(again()).rejects.toThrow(/already running/)
    await bench.storage.close()
    const second = await again()
    await second.close()
  })

  test('F2 the file is written ahead', async () => {
    const bench = await opened()
    const file = new Database(bench.file, { readonly: true })
    expect(file.pragma('journal_mode', { simple: true })).toBe('wal')
    file.close()
  })

  test('F3 a full disk acknowledges nothing, says so, and takes entries again when there is room', async () => {
    const bench = await opened({ maxPages: 400 })
    const device = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, device.team)
    let n = 0
    const press = async () => {
      n += 1
      const body = JSON.stringify({ words: 'x'.repeat(1_900) })
      const entry = anEntry({ device: device.id, n, kind: 'note.1', body })
      await bench.storage.run('append', { ...device.sends, meeting, entries: [entry] })
    }
    const pressUntilFull = async () => {
      for (;;) await press()
    }
    await expect(pressUntilFull()).rejects.toThrow(NotSaved)
    expect(bench.storage.standing().why).toMatch(/full/)
    await expect(press()).rejects.toThrow(NotSaved)
    const read = async () => {
      const seqs: number[] = []
      for (;;) {
        const page = await bench.storage.read.entriesAfter(meeting, seqs.at(-1) ?? 0)
        if (page.length === 0) return seqs
        seqs.push(...page.map(({ seq }) => seq))
      }
    }
    // Every one that was answered is there, and none that was not: the last two presses were refused.
    expect(await read()).toEqual(Array.from({ length: n - 2 }, (_, index) => index + 1))
    makeRoom(bench.file, meeting)
    await expect.poll(() => bench.storage.standing().writing, { timeout: 5_000 }).toBe(true)
    await press()
  })

  test('F4 a store of the first day keeps the drafts it has as versions', async () => {
    const bench = await opened()
    const { id: device, team } = await joined(bench, { role: 'captain' })
    const meeting = await meetingOf(bench, team)
    const of = { team, meeting, device, document: 'plan' } as const
    const save = (basedOn: number, nowMs: number) =>
      bench.storage.run('saveDraft', { ...of, save: { basedOn, content: basedOn }, nowMs })
    await save(0, 70)
    await save(1, 80)
    asOnTheFirstDay(bench.file)
    await bench.reopen()
    const versions = () => bench.storage.read.draftVersions(meeting, 'plan')
    expect(await versions()).toEqual([{ version: 2, savedAt: 80, savedBy: 'A device' }])
    // A minute after the one that was carried over.
    await save(2, 60_080)
    expect((await versions()).map(({ version }) => version)).toEqual([3, 2])
  })

  test('F5 a tray from before captains decided on it gets the roles its devices had', async () => {
    const bench = await opened()
    const { id, team, sends } = await joined(bench, { role: 'pitWall' })
    const meeting = await meetingOf(bench, team)
    const revoke = { team, device: id, change: { revoked: true }, nowMs: 0 } as const
    await bench.storage.run('changeDevice', revoke)
    const entries = [anEntry({ device: id, n: 1 })]
    await bench.storage.run('append', { ...sends, meeting, entries })
    const other = new Database(bench.file)
    beforeTheThird(other)
    other.close()
    await bench.reopen()
    expect(await bench.storage.read.tray(team)).toMatchObject([{ role: 'pitWall' }])
  })
})

/** The tables before the second step. */
function asOnTheFirstDay(file: string): void {
  const other = new Database(file)
  beforeTheThird(other)
  other.exec('drop table document_version; drop table plan_link')
  other.exec("delete from kysely_migration where name = '0002-second'")
  other.close()
}

function beforeTheThird(other: Database.Database): void {
  beforeTheFourth(other)
  other.exec('alter table device drop column wall_meeting')
  other.exec('alter table device drop column wall_taken_at')
  for (const column of ['role', 'decided', 'decided_at']) {
    other.exec(`alter table tray drop column ${column}`)
  }
  other.exec("delete from kysely_migration where name = '0003-third'")
}

function beforeTheFourth(other: Database.Database): void {
  other.exec('drop index device_changed; alter table device drop column changed_at')
  other.exec('alter table server_time drop column ahead_ms')
  other.exec('drop table process; drop table presence; drop table ticket; drop table tries')
  other.exec("delete from kysely_migration where name = '0004-fourth'")
}

/** Somebody deletes something: what the log itself never does. */
function makeRoom(file: string, meeting: string): void {
  const other = new Database(file)
  other.prepare('delete from entry where meeting = ? and seq <= 100').run(meeting)
  other.close()
}
