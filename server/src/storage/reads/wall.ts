/** Who has the wall of a meeting besides those whose role it is. */
import type { Device } from '@pitlamp/contract'
import type { Kysely } from 'kysely'
import { deviceOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

export function wallReads(db: Kysely<Tables>) {
  return {
    /** Devices that have taken the wall of this meeting, the longest first. */
    async wallTakenIn(team: string, meeting: string): Promise<readonly Device[]> {
      const rows = await db
        .selectFrom('device')
        .selectAll()
        .where('team', '=', team)
        .where('wall_meeting', '=', meeting)
        .where('wall_taken_at', 'is not', null)
        .where('revoked_at', 'is', null)
        .orderBy('wall_taken_at')
        .orderBy('id')
        .execute()
      return rows.map(deviceOf)
    },
  }
}
