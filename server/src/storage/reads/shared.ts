/** What the processes over one database have of each other. */
import type { Kysely } from 'kysely'
import { PROCESS_SILENT_MS } from '../commands/processes.ts'
import { deviceOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

const IDS_A_STATEMENT = 1_000

export function sharedReads(db: Kysely<Tables>) {
  return {
    /** How far the logs of these meetings go. */
    async headsOf(
      meetings: readonly string[],
    ): Promise<readonly { readonly meeting: string; readonly lastSeq: number }[]> {
      const found: { meeting: string; lastSeq: number }[] = []
      for (let from = 0; from < meetings.length; from += IDS_A_STATEMENT) {
        const rows = await db
          .selectFrom('meeting')
          .select(['id as meeting', 'last_seq as lastSeq'])
          .where('id', 'in', meetings.slice(from, from + IDS_A_STATEMENT))
          .execute()
        found.push(...rows)
      }
      return found
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
