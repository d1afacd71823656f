/**
 * K1  A copy holds the whole store as it stood when it was made, and is one file.
 * K2  A backup overwrites nothing, leaves nothing behind where it fails, and says what is wrong.
 * K3  A restore brings it back, and keeps what was there as a store of its own.
 * K4  A restore touches nothing before the file is found good and no server runs.
 * K5  A restore turns back neither the server's clock nor who may come in.
 */
import Database from 'better-sqlite3'
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import {
  anEntry,
  joined,
  meetingOf,
  type Bench,
  type JoinedDevice,
} from '../storage/contract-bench.ts'
import { StoreInUse } from '../storage/port.ts'
import { openSqlite } from '../storage/sqlite/open.ts'
import { backUp } from './backup-command.ts'
import { NotDone } from './not-done.ts'
import { restore } from './restore-command.ts'

const folders: string[] = []
afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true })))

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-'))
  folders.push(folder)
  return folder
}

/** A store with one device and one meeting, and presses of that device. */
async function aTeam(data = newFolder()) {
  const file = join(data, 'pitlamp.db')
  const storage = await openSqlite({ file, mark: () => ({ markMs: 0, epoch: 0 }) })
  const bench: Bench = { storage, reopen: () => Promise.resolve(), close: () => storage.close() }
  const device = await joined(bench, { role: 'pitWall' })
  const meeting = await meetingOf(bench, device.team)
  let n = 0
  const press = async (presses: number) => {
    for (let press = 0; press < presses; press += 1) {
      const entries = [anEntry({ device: device.id, n: ++n })]
      await storage.run('append', { ...device.sends, meeting, entries })
    }
  }
  return { data, file, storage, device, meeting, press }
}

async function logOf(data: string, meeting: string): Promise<readonly number[]> {
  const file = join(data, 'pitlamp.db')
  const storage = await openSqlite({ file, mark: () => ({ markMs: 0, epoch: 0 }) })
  const log = await storage.read.entriesAfter(meeting, 0)
  await storage.close()
  return log.map(({ seq }) => seq)
}

async function said(
  command: typeof backUp,
  file: string | undefined,
  data: string,
): Promise<string> {
  let text = ''
  await command(file, { data }, { write: (part) => (text += part) })
  return text
}

test('K1 copies beside an open store what was answered until then, into one file of its owner’s', async () => {
  const { data, storage, meeting, press } = await aTeam()
  await storage.run('keepTime', { markMs: Date.UTC(2030, 5, 1, 12, 34), shiftMs: 0, epoch: 1 })
  await press(3)
  const copies = newFolder()
  const copy = join(copies, 'pitlamp.db')
  expect(await said(backUp, copy, data)).toContain(
    `${copy} holds 1 meeting and 3 entries, as of 2030-06-01 12:34 UTC`,
  )
  await press(2)
  expect(readdirSync(copies)).toEqual(['pitlamp.db'])
  expect(statSync(copy).mode & 0o777).toBe(0o600)
  expect(await logOf(copies, meeting)).toEqual([1, 2, 3])
  await storage.close()
})

test('K2 overwrites nothing', async () => {
  const { data, storage } = await aTeam()
  const copy = join(newFolder(), 'mine')
  writeFileSync(copy, 'precious')
  await expect(said(backUp, copy, data)).rejects.toThrow(`${copy} is there already`)
  expect(readFileSync(copy, 'utf8')).toBe('precious')
  await storage.close()
})

test('K2 says what is wrong and leaves nothing behind', async () => {
  const { data, file, storage, press } = await aTeam()
  await press(200)
  await storage.close()
  const copies = newFolder()
  const copy = join(copies, 'copy')
  await expect(said(backUp, undefined, data)).rejects.toThrow('npm run backup -- FILE')
  await expect(said(backUp, join(copies, 'no', 'copy'), data)).rejects.toThrow('There is no folder')
  await expect(said(backUp, copy, copies)).rejects.toThrow('There is nothing to copy')
  // Half of the file is gone: whatever VACUUM makes of that, it is no backup.
  truncateSync(file, Math.floor(statSync(file).size / 2 / 4096) * 4096)
  await expect(said(backUp, copy, data)).rejects.toThrow(NotDone)
  expect(readdirSync(copies)).toEqual([])
})

test('K3 brings a copy back, and the store that was there by the same way', async () => {
  const { data, file, storage, meeting, press } = await aTeam()
  await press(3)
  const copy = join(newFolder(), 'copy')
  await said(backUp, copy, data)
  await press(2)
  await storage.close()
  chmodSync(file, 0o640)
  const text = await said(restore, copy, data)
  expect(statSync(file).mode & 0o777).toBe(0o640)
  expect(text).toContain(`${data} now holds 1 meeting and 3 entries`)
  expect(text).toContain('npm start')
  expect(await logOf(data, meeting)).toEqual([1, 2, 3])
  const [, before = ''] = /npm run restore -- (\S+)/.exec(text) ?? []
  expect(before).toMatch(/before-restore-\d{4}-\d{2}-\d{2}T[\d-]+Z\/pitlamp\.db$/)
  await said(restore, before, data)
  expect(await logOf(data, meeting)).toEqual([1, 2, 3, 4, 5])
})

test('K3 brings a copy to a machine without a store, and one in place of a damaged one', async () => {
  const { data, file, storage, meeting, press } = await aTeam()
  await press(3)
  const copy = join(newFolder(), 'copy')
  await said(backUp, copy, data)
  await storage.close()
  const elsewhere = join(newFolder(), 'data')
  expect(await said(restore, copy, elsewhere)).toContain('join again')
  expect(await logOf(elsewhere, meeting)).toEqual([1, 2, 3])
  writeFileSync(file, 'x'.repeat(10_000))
  await said(restore, copy, data)
  expect(await logOf(data, meeting)).toEqual([1, 2, 3])
  const aside = readdirSync(data).find((name) => name.startsWith('before-restore-')) ?? ''
  expect(readFileSync(join(data, aside, 'pitlamp.db'), 'utf8')).toBe('x'.repeat(10_000))
})

test('K4 refuses what is no whole store of this build, and touches nothing', async () => {
  const { data, file, storage, press } = await aTeam()
  await press(200)
  const copies = newFolder()
  const copyNamed = async (name: string, spoil: (copy: string) => void) => {
    const copy = join(copies, name)
    await said(backUp, copy, data)
    spoil(copy)
    return copy
  }
  const newer = await copyNamed('newer', (copy) =>
    change(copy, `insert into kysely_migration values ('9999-later', 'now')`),
  )
  const without = await copyNamed('without', (copy) => change(copy, 'drop table tray'))
  const short = await copyNamed('short', (copy) =>
    truncateSync(copy, Math.floor(statSync(copy).size / 2 / 4096) * 4096),
  )
  const [text, empty, other] = ['text', 'empty', 'other'].map((name) => join(copies, name))
  writeFileSync(text ?? '', 'Not a database at all, only words. '.repeat(200))
  writeFileSync(empty ?? '', '')
  change(other ?? '', 'create table note (words text)')
  await storage.close()
  const before = readFileSync(file)
  const names = readdirSync(data)
  const refused = async (copy: string | undefined, why: RegExp) => {
    await expect(said(restore, copy, data)).rejects.toThrow(why)
    await expect(said(restore, copy, join(copies, 'untouched'))).rejects.toThrow(why)
  }
  await refused(newer, /made by a newer Pitlamp \(9999-later\)/)
  await refused(without, /tray\.\w+ is missing/)
  await refused(short, /damaged/)
  for (const file of [text, empty, other]) await refused(file, /no store of Pitlamp/)
  await refused(join(copies, 'nowhere'), /There is no file/)
  await refused(undefined, /npm run restore -- FILE/)
  await expect(said(restore, file, data)).rejects.toThrow('the store itself')
  expect(readFileSync(file).equals(before)).toBe(true)
  expect(readdirSync(data)).toEqual(names)
  expect(existsSync(join(copies, 'untouched'))).toBe(false)
})

test('K4 refuses while a server runs on the folder', async () => {
  const { data, storage, meeting, press } = await aTeam()
  await press(1)
  const copy = join(newFolder(), 'copy')
  await said(backUp, copy, data)
  await press(1)
  await expect(said(restore, copy, data)).rejects.toThrow(StoreInUse)
  await press(1)
  await storage.close()
  expect(await logOf(data, meeting)).toEqual([1, 2, 3])
})

test('K5 the epoch and the mark do not fall, and the machine keeps its own shift', async () => {
  const { data, storage } = await aTeam()
  const copy = join(newFolder(), 'copy')
  await storage.run('keepTime', { markMs: 5_000, shiftMs: 700, epoch: 2 })
  await said(backUp, copy, data)
  await storage.run('keepTime', { markMs: 4_000, shiftMs: -900, epoch: 3 })
  await storage.close()
  await said(restore, copy, data)
  expect(timeIn(data)).toEqual({ mark_ms: 4_000, shift_ms: -900, epoch: 3 })
  const elsewhere = join(newFolder(), 'data')
  await said(restore, copy, elsewhere)
  expect(timeIn(elsewhere)).toEqual({ mark_ms: 5_000, shift_ms: 0, epoch: 2 })
  const other = await aTeam()
  await other.storage.run('keepTime', { markMs: 9_000, shiftMs: 60, epoch: 1 })
  await other.storage.close()
  // A team of its own: only the clock is carried over, and its devices join again.
  expect(await said(restore, copy, other.data)).toContain('join again')
  expect(timeIn(other.data)).toEqual({ mark_ms: 5_000, shift_ms: 60, epoch: 2 })
})

test('K5 who was taken out stays out, and who joined since goes on', async () => {
  const { data, storage, device } = await aTeam()
  const copy = join(newFolder(), 'copy')
  await said(backUp, copy, data)
  const change = { revoked: true } as const
  await storage.run('changeDevice', { team: device.team, device: device.id, change, nowMs: 9 })
  const later: JoinedDevice = await joined(
    { storage, reopen: () => Promise.resolve(), close: () => Promise.resolve() },
    { role: 'crew' },
  )
  await storage.close()
  await said(restore, copy, data)
  const file = join(data, 'pitlamp.db')
  const back = await openSqlite({ file, mark: () => ({ markMs: 0, epoch: 0 }) })
  expect((await back.read.holderOf(device.tokenHash))?.device.revokedAt).toBe(9)
  expect((await back.read.holderOf(later.tokenHash))?.device.role).toBe('crew')
  await back.close()
})

function change(file: string, sql: string): void {
  const open = new Database(file)
  open.exec(sql)
  open.close()
}

function timeIn(data: string): unknown {
  const open = new Database(join(data, 'pitlamp.db'), { readonly: true })
  const row = open.prepare('select mark_ms, shift_ms, epoch from server_time').get()
  open.close()
  return row
}
