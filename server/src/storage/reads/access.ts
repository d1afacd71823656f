/** Devices, and who holds which. */
import type { Device } from '@pitlamp/contract'
import type { Kysely } from 'kysely'
import { deviceOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

/** A device that came with a valid token, and its team. */
export interface Holder {
  readonly device: Device
  readonly team: { readonly id: string; readonly name: string }
}

export function accessReads(db: Kysely<Tables>) {
  return {
    async holderOf(tokenHash: string): Promise<Holder | undefined> {
      const row = await db
        .selectFrom('device')
        .innerJoin('team', 'team.id', 'device.team')
        .selectAll('device')
        .select('team.name as team_name')
        .where('token_hash', '=', tokenHash)
        .executeTakeFirst()
      return row && { device: deviceOf(row), team: { id: row.team, name: row.team_name } }
    },

    async devices(team: string): Promise<readonly Device[]> {
      const rows = await db
        .selectFrom('device')
        .selectAll()
        .where('team', '=', team)
        .orderBy('joined_at')
        .orderBy('id')
        .execute()
      return rows.map(deviceOf)
    },

    /** Not counting those that were taken out. */
    async devicesJoined(): Promise<number> {
      const { found } = await db
        .selectFrom('device')
        .select((select) => select.fn.countAll<number>().as('found'))
        .where('revoked_at', 'is', null)
        .executeTakeFirstOrThrow()
      return found
    },

    /** Whether somebody can still let others in. */
    async hasCaptain(team: string): Promise<boolean> {
      const row = await db
        .selectFrom('device')
        .select('id')
        .where('team', '=', team)
        .where('role', '=', 'captain')
        .where('simulator', '=', 0)
        .where('revoked_at', 'is', null)
        .executeTakeFirst()
      return row !== undefined
    },

    async firstTeam(): Promise<string | undefined> {
      const row = await db.selectFrom('team').select('id').orderBy('created_at').executeTakeFirst()
      return row?.id
    },

    /** Whether more than one team is in this store: what belongs to the installation is then nobody's captain's. */
    async isShared(): Promise<boolean> {
      const rows = await db.selectFrom('team').select('id').limit(2).execute()
      return rows.length > 1
    },
  }
}
