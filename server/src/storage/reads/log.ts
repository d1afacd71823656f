/** The log in pages, and the tray. */
import { PAGE_ENTRIES, type TrayLine } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { Kysely } from 'kysely'
import { entryOf } from '../rows.ts'
import type { Tables, TrayTable } from '../tables.ts'

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

    /** The devices that wrote into this meeting. Goes through its whole log. */
    async writersOf(meeting: string): Promise<readonly string[]> {
      const rows = await db
        .selectFrom('entry')
        .select('device')
        .distinct()
        .where('meeting', '=', meeting)
        .execute()
      return rows.map(({ device }) => device)
    },

    /** Undecided first, in the order in which they came. */
    async tray(team: string): Promise<readonly TrayLine[]> {
      const rows = await db
        .selectFrom('tray')
        .innerJoin('device', (join) =>
          join.onRef('device.team', '=', 'tray.team').onRef('device.id', '=', 'tray.device'),
        )
        .selectAll('tray')
        .select('device.name as name')
        .where('tray.team', '=', team)
        .orderBy((order) => order.case().when('decided_at', 'is', null).then(0).else(1).end())
        .orderBy('received_at')
        .orderBy('tray.id')
        .limit(PAGE_ENTRIES)
        .execute()
      return rows.map(trayLineOf)
    },
  }
}

function trayLineOf(row: TrayTable & { readonly name: string }): TrayLine {
  const { id, meeting, device, name, role, decided, decided_at: at } = row
  return {
    ...{ id, meeting, device, name, role },
    receivedAt: row.received_at,
    entry: JSON.parse(row.entry) as unknown,
    ...(decided === null || at === null ? {} : { decided: { what: decided, at } }),
  }
}
