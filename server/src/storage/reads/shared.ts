/** What the processes over one database have of each other. */
import { sql, type Kysely } from 'kysely'
import { PROCESS_SILENT_MS } from '../commands/processes.ts'
import { deviceOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

export function sharedReads(db: Kysely<Tables>) {
  return {
    /** The meetings whose logs go further than these heads, and how far. Of many hardly any do. */
    async logsBeyond(heads: ReadonlyMap<string, number>) {
      const known = JSON.stringify(Object.fromEntries(heads))
      const { rows } = await sql<{ readonly meeting: string; readonly lastSeq: number }>`
        select id as meeting, last_seq as "lastSeq"
        from jsonb_each_text(${known}::jsonb) as known join meeting on id = known.key
        where last_seq > known.value::bigint`.execute(db)
      return rows
    },

    /** Devices that a captain or the wall changed since, by server time. */
    async devicesChangedSince(sinceMs: number) {
      const rows = await db
        .selectFrom('device')
        .selectAll()
        .where('changed_at', '>=', Math.floor(sinceMs))
        .execute()
      return rows.map((row) => ({ team: row.team, device: deviceOf(row) }))
    },

    /** The screens that other living processes serve in a meeting, each as JSON, the last to say so last. */
    async screensElsewhere(
      meeting: string,
      { process, nowMs }: { readonly process: string; readonly nowMs: number },
    ): Promise<readonly string[]> {
      const rows = await db
        .selectFrom('presence')
        .innerJoin('process', 'process.id', 'presence.process')
        .select('screens')
        .where('meeting', '=', meeting)
        .where('process', '!=', process)
        .where('seen_at', '>=', Math.floor(nowMs) - PROCESS_SILENT_MS)
        .orderBy('told_at')
        .execute()
      return rows.map(({ screens }) => screens)
    },
  }
}
