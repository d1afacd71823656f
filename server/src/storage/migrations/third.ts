/** The captain decides on the tray, and lets crew devices take the wall. */
import type { Kysely } from 'kysely'

export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('device').addColumn('wall_meeting', 'text').execute()
  await db.schema.alterTable('device').addColumn('wall_taken_at', 'bigint').execute()
  // What is there already came from devices whose role has not changed since they were taken out.
  await db.schema
    .alterTable('tray')
    .addColumn('role', 'text', (column) => column.notNull().defaultTo('viewer'))
    .execute()
  await db.schema.alterTable('tray').addColumn('decided', 'text').execute()
  await db.schema.alterTable('tray').addColumn('decided_at', 'bigint').execute()
  await rolesOf(db)
}

/** Of both tables, only what is carried over. */
interface Kept {
  device: { team: string; id: string; role: string }
  tray: { team: string; device: string; role: string }
}

async function rolesOf(db: Kysely<Kept>): Promise<void> {
  const devices = await db.selectFrom('device').select(['team', 'id', 'role']).execute()
  for (const { team, id, role } of devices) {
    await db
      .updateTable('tray')
      .set({ role })
      .where('team', '=', team)
      .where('device', '=', id)
      .execute()
  }
}
