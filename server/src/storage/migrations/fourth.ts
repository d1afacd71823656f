/** What several processes over one database have to know of each other. Over a file these stay empty. */
import type { Kysely } from 'kysely'

export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('device').addColumn('changed_at', 'bigint').execute()
  await db.schema.createIndex('device_changed').on('device').column('changed_at').execute()
  await db.schema.alterTable('server_time').addColumn('ahead_ms', 'bigint').execute()
  await db.schema
    .createTable('process')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('seen_at', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('presence')
    .addColumn('process', 'text', (column) => column.notNull())
    .addColumn('meeting', 'text', (column) => column.notNull())
    .addColumn('screens', 'text', (column) => column.notNull())
    .addColumn('told_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('presence_key', ['meeting', 'process'])
    .execute()
  await db.schema
    .createTable('ticket')
    .addColumn('code_hash', 'text', (column) => column.primaryKey())
    .addColumn('ticket', 'text', (column) => column.notNull())
    .addColumn('valid_until', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('tries')
    .addColumn('address_hash', 'text', (column) => column.primaryKey())
    .addColumn('wrong', 'integer', (column) => column.notNull())
    .addColumn('waits_until', 'bigint', (column) => column.notNull())
    .execute()
}
