/**
 * What a restore does not turn back, taken from the store that was there until now.
 *
 * - The server's clock. Screens ignore probes of an older epoch than they know, so the epoch must not fall; the
 *   mark must not either. How far the machine's clock has to be moved is the machine's, never the copy's: on a
 *   machine without a store it starts at 0, and the devices that come back tell if that is wrong.
 * - Who may come in. A device that was taken out since stays out, a code that was used stays used, and one that
 *   joined since goes on without joining again.
 */
import Database from 'better-sqlite3'
import type { KeptTime } from '../storage/commands/server-time.ts'

export type CarriedOver = 'clockAndAccess' | 'clock' | 'nothing'

/** `copy` becomes what is to be put in place; `here` is only read. */
export function carryOver(copy: string, here: string | undefined): CarriedOver {
  const store = new Database(copy)
  try {
    if (here === undefined) {
      keepTime(store, timeIn(store, 'main'), undefined)
      return 'nothing'
    }
    return from(store, here)
  } finally {
    store.close()
  }
}

function from(store: Database.Database, here: string): CarriedOver {
  try {
    store.prepare('attach ? as here').run(here)
    store.transaction(() => {
      keepTime(store, timeIn(store, 'main'), timeIn(store, 'here'))
      for (const [table, belongs] of Object.entries(ACCESS)) takeOver(store, table, belongs)
    })()
    return isOfTheSameTeam(store) ? 'clockAndAccess' : 'clock'
  } catch {
    keepTime(store, timeIn(store, 'main'), undefined)
    return 'nothing'
  }
}

function isOfTheSameTeam(store: Database.Database): boolean {
  const shared = 'select 1 from main.team where id in (select id from here.team)'
  return store.prepare(shared).get() !== undefined
}

const OF_THE_TEAM = 'team in (select id from main.team)'
/** Tables of access, and which of their rows mean something to the copy. */
const ACCESS: Readonly<Record<string, string>> = {
  device: OF_THE_TEAM,
  invite: OF_THE_TEAM,
  plan_link: `${OF_THE_TEAM} and meeting in (select id from main.meeting)`,
}

/** A table that is not alike in both was changed by a step between them: the copy's rows stay. */
function takeOver(store: Database.Database, table: string, belongs: string): void {
  const [columns, others] = ['main', 'here'].map((schema) => columnsOf(store, schema, table))
  if (!columns || columns === '' || columns !== others) return
  store.exec(
    `insert or replace into main.${table} (${columns})
     select ${columns} from here.${table} where ${belongs}`,
  )
}

function columnsOf(store: Database.Database, schema: string, table: string): string {
  const columns = store.pragma(`${schema}.table_info(${table})`) as readonly { name: string }[]
  return columns.map(({ name }) => name).join(', ')
}

function timeIn(store: Database.Database, schema: string): KeptTime | undefined {
  const row = `select mark_ms as markMs, shift_ms as shiftMs, epoch from ${schema}.server_time`
  return store.prepare(row).get() as KeptTime | undefined
}

function keepTime(
  store: Database.Database,
  copied: KeptTime | undefined,
  here: KeptTime | undefined,
): void {
  const kept = timeAfter(copied, here)
  if (!kept) return
  store
    .prepare(
      `insert or replace into main.server_time (id, mark_ms, shift_ms, epoch)
       values (1, @markMs, @shiftMs, @epoch)`,
    )
    .run(kept)
}

/** The later epoch's mark counts: what went before, the captain has set right. */
function timeAfter(copied: KeptTime | undefined, here: KeptTime | undefined): KeptTime | undefined {
  if (!copied) return here
  if (!here) return { ...copied, shiftMs: 0 }
  const { shiftMs } = here
  if (here.epoch > copied.epoch) return here
  if (here.epoch < copied.epoch) return { ...copied, shiftMs }
  return { ...copied, shiftMs, markMs: Math.max(copied.markMs, here.markMs) }
}
