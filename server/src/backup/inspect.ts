/** Looks at a file that is to become the store, or has just been copied from it, without changing it. */
import Database from 'better-sqlite3'
import { MIGRATION_NAMES, migrate } from '../storage/migrations/index.ts'
import { kyselyOver } from '../storage/sqlite/dialect.ts'
import { NotDone } from './not-done.ts'

export interface Holding {
  readonly meetings: number
  readonly entries: number
  /** The server's clock when it was last written to. */
  readonly markMs?: number
}

/** @throws NotDone where it is no whole store that this build can open */
export async function inspect(file: string): Promise<Holding> {
  try {
    const store = new Database(file, { readonly: true, fileMustExist: true })
    try {
      const steps = stepsIn(store, file)
      const missing = firstMissing(columnsOf(store), await columnsAfter(steps.at(-1)))
      if (missing !== undefined)
        throw new NotDone(`${file} is no whole store: ${missing} is missing.`)
      refuseDamaged(store, file)
      return holdingOf(store)
    } finally {
      store.close()
    }
  } catch (error) {
    throw inWords(error, file)
  }
}

const MIGRATIONS_TABLE = 'kysely_migration'

/** The steps its tables were made by. */
function stepsIn(store: Database.Database, file: string): readonly string[] {
  const found = store.prepare('select 1 from sqlite_master where name = ?').get(MIGRATIONS_TABLE)
  if (found === undefined) throw new NotDone(`${file} is no store of Pitlamp.`)
  const names = `select name from ${MIGRATIONS_TABLE} order by name`
  const steps = store.prepare(names).pluck().all() as readonly string[]
  const newer = steps.filter((name) => !MIGRATION_NAMES.includes(name))
  if (newer.length > 0) {
    throw new NotDone(
      `${file} was made by a newer Pitlamp (${newer.join(', ')}). Update this one first; nothing was changed.`,
    )
  }
  return steps
}

function columnsOf(store: Database.Database): readonly string[] {
  const every = `select t.name || '.' || c.name from sqlite_master t, pragma_table_info(t.name) c
    where t.type = 'table'`
  return store.prepare(every).pluck().all() as readonly string[]
}

/** What the same steps make of an empty database. */
async function columnsAfter(step: string | undefined): Promise<readonly string[]> {
  const empty = new Database(':memory:')
  try {
    await migrate(kyselyOver(empty), step)
    return columnsOf(empty)
  } finally {
    empty.close()
  }
}

function firstMissing(found: readonly string[], wanted: readonly string[]): string | undefined {
  return wanted.find((column) => !found.includes(column))
}

function refuseDamaged(store: Database.Database, file: string): void {
  const said = store.pragma('integrity_check(1)', { simple: true })
  if (said !== 'ok') throw damaged(file)
}

function holdingOf(store: Database.Database): Holding {
  const count = (table: string) =>
    store.prepare(`select count(*) from ${table}`).pluck().get() as number
  const markMs = store.prepare('select mark_ms from server_time').pluck().get() as
    number | undefined
  return {
    meetings: count('meeting'),
    entries: count('entry'),
    ...(markMs !== undefined && { markMs }),
  }
}

function inWords(error: unknown, file: string): unknown {
  const { code = '' } = error as { readonly code?: string }
  if (code === 'SQLITE_NOTADB') return new NotDone(`${file} is no store of Pitlamp.`)
  if (/^SQLITE_(CORRUPT|IOERR)/.test(code)) return damaged(file)
  if (/^SQLITE_(CANTOPEN|READONLY)|^EACCES$/.test(code)) {
    return new NotDone(`${file} cannot be read.`)
  }
  return error
}

function damaged(file: string): NotDone {
  return new NotDone(`${file} is damaged: it does not pass SQLite’s integrity check.`)
}

/** `2 meetings and 1,234 entries, as of 2026-11-25 20:43 UTC` */
export function inWordsOf({ meetings, entries, markMs }: Holding): string {
  const held = `${counted(meetings, 'meeting', 'meetings')} and ${counted(entries, 'entry', 'entries')}`
  if (markMs === undefined) return held
  const asOf = new Date(markMs).toISOString().slice(0, 16).replace('T', ' ')
  return `${held}, as of ${asOf} UTC`
}

function counted(count: number, one: string, several: string): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? one : several}`
}
