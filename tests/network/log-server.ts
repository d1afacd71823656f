/** The server's side of the log as it is: intake, append in one transaction, reads; only sockets and threads are left out. */
import Database from 'better-sqlite3'
import type { Kysely } from 'kysely'
import type { Answer, Append, Appended, EntriesPage } from '@pitlamp/contract'
import type { RecordedEntry, Role } from '@pitlamp/race'
import type { Command } from '../../server/src/storage/commands/index.ts'
import { migrate } from '../../server/src/storage/migrations/index.ts'
import { NotSaved, type Storage } from '../../server/src/storage/port.ts'
import type { Holder } from '../../server/src/storage/reads/access.ts'
import { readsOver } from '../../server/src/storage/reads/index.ts'
import { kyselyOver } from '../../server/src/storage/sqlite/dialect.ts'
import { transact } from '../../server/src/storage/sqlite/transact.ts'
import type { Tables } from '../../server/src/storage/tables.ts'
import { takeEntries } from '../../server/src/sync/intake.ts'
import { ServerTime } from '../../server/src/time/server-time.ts'
import { DEVICES, MEETING, TEAM } from './names.ts'

/** Short, so that catching up takes several pages. */
const PAGE_ENTRIES = 7

export interface NewsOfLog {
  readonly from: number
  readonly to: number
  readonly entries: readonly RecordedEntry[]
}

export class LogServer {
  /** Turns as milliseconds: it goes on over every restart. */
  nowMs = 1_000
  diskWorks = true
  onNews: (news: NewsOfLog) => void = () => undefined
  readonly #time = new ServerTime({ wall: () => 0, monotonic: () => this.nowMs }, undefined)
  #store = storeOf(Buffer.alloc(0))
  #copy: Buffer = Buffer.alloc(0)

  async open(): Promise<void> {
    this.#copy = await template()
    await this.putBack()
  }

  async close(): Promise<void> {
    await this.#store.db.destroy()
  }

  async restart(): Promise<void> {
    await this.#openFrom(this.#store.file.serialize())
    await migrate(this.#store.db)
  }

  copy(): void {
    this.#copy = this.#store.file.serialize()
  }

  async putBack(): Promise<void> {
    await this.#openFrom(this.#copy)
  }

  async append(device: string, message: Append): Promise<Answer<Appended>> {
    const storage: Storage = {
      run: (name, input) => this.#run({ name, input }),
      read: readsOver(this.#store.db),
      where: { file: ':memory:' },
      onNews: () => undefined,
      standing: () => ({ writing: this.diskWorks }),
      close: () => Promise.resolve(),
    }
    return takeEntries({ storage, time: this.#time }, holderOf(device), message)
  }

  async giveRole(device: string, role: Role): Promise<void> {
    const input = { team: TEAM, device, change: { role }, nowMs: this.nowMs }
    if (this.diskWorks) await this.#run({ name: 'changeDevice', input })
  }

  async last(): Promise<number> {
    return (await readsOver(this.#store.db).meeting(TEAM, MEETING))?.lastSeq ?? 0
  }

  async page(after: number): Promise<EntriesPage> {
    const read = await readsOver(this.#store.db).entriesAfter(MEETING, after)
    const entries = read.slice(0, PAGE_ENTRIES)
    return { from: after, to: entries.at(-1)?.seq ?? after, last: await this.last(), entries }
  }

  /** All of it; no schedule is long enough for a second page of the real length. */
  async log(): Promise<readonly RecordedEntry[]> {
    return readsOver(this.#store.db).entriesAfter(MEETING, 0)
  }

  /** Typed by the storage port where it is handed out. */
  async #run<T>(command: Command): Promise<T> {
    if (!this.diskWorks) throw new NotSaved('It is full.')
    const { markMs, epoch } = this.#time.kept()
    const [result] = await transact(this.#store.db, { commands: [command], markMs, epoch })
    if (!result || !('answer' in result)) throw new Error(JSON.stringify(result))
    const { news } = result.answer as { readonly news?: NewsOfLog }
    if (news) this.onNews(news)
    return result.answer as T
  }

  async #openFrom(bytes: Buffer): Promise<void> {
    await this.#store.db.destroy()
    this.#store = storeOf(bytes)
  }
}

function holderOf(device: string): Holder {
  const team = { id: TEAM, name: 'Team' }
  return { device: { id: device, name: device, role: 'pitWall', joinedAt: 0 }, team }
}

interface Store {
  readonly file: Database.Database
  readonly db: Kysely<Tables>
}

/** In memory, since nothing is cut off here but connections: what a power cut leaves is tests/power's to show. */
function storeOf(bytes: Buffer): Store {
  const file = new Database(bytes)
  file.pragma('foreign_keys = ON')
  return { file, db: kyselyOver(file) }
}

let made: Promise<Buffer> | undefined

/** A store with the team, its devices and the meeting, made once a process and opened for each schedule. */
function template(): Promise<Buffer> {
  made ??= makeTemplate()
  return made
}

async function makeTemplate(): Promise<Buffer> {
  const { file, db } = storeOf(Buffer.alloc(0))
  await migrate(db)
  const invite = { team: TEAM, codeHash: 'c', role: 'pitWall', kind: 'qr', validUntil: 9, nowMs: 1 }
  const meeting = { id: MEETING, name: 'Meeting' }
  const commands: Command[] = [
    { name: 'foundTeam', input: { id: TEAM, name: 'Team', nowMs: 1 } },
    { name: 'makeInvite', input: invite },
    ...DEVICES.map((device): Command => {
      const input = { codeHash: 'c', device, name: device, tokenHash: device, nowMs: 1 }
      return { name: 'join', input }
    }),
    { name: 'createMeeting', input: { team: TEAM, meeting, nowMs: 1 } },
  ]
  const results = await transact(db, { commands, markMs: 1, epoch: 1 })
  const failed = results.find((result) => !('answer' in result))
  if (failed) throw new Error(JSON.stringify(failed))
  const bytes = file.serialize()
  await db.destroy()
  return bytes
}
