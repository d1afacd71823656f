/** The log in pages, and the tray. */
import { PAGE_ENTRIES } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { Kysely } from 'kysely'
import { entryOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

/** An entry of a revoked device, and when it came. */
export interface TrayLine {
  readonly meeting: string
  readonly device: string
  readonly receivedAt: number
  readonly entry: unknown
}

export function logReads(db: Kysely<Tables>) {
  return {
    async entriesAfter(meeting: string, after: number): Promise<readonly RecordedEntry[]> {
      const rows = await db
        .selectFrom('entry')
        .selectAll()
        .where('meeting', '=', meeting)
        .where('seq', '>', after)
        .orderBy('seq')
        .limit(PAGE_ENTRIES)
        .execute()
      return rows.map(entryOf)
    },

    async tray(team: string): Promise<readonly TrayLine[]> {
      const rows = await db
        .selectFrom('tray')
        .selectAll()
        .where('team', '=', team)
        .orderBy('received_at')
        .orderBy('id')
        .limit(PAGE_ENTRIES)
        .execute()
      return rows.map((row) => ({
        meeting: row.meeting,
        device: row.device,
        receivedAt: row.received_at,
        entry: JSON.parse(row.entry) as unknown,
      }))
    },
  }
}
