/** The tables of the first day. */
import type { Kysely } from 'kysely'
import { isPostgres } from '../is-postgres.ts'

export async function up(db: Kysely<unknown>): Promise<void> {
  await teams(db)
  await meetings(db)
  await log(db)
  await laps(db)
  await installation(db)
}

async function teams(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('team')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('person')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('person_key', ['team', 'id'])
    .execute()
  await db.schema
    .createTable('device')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('token_hash', 'text', (column) => column.notNull().unique())
    .addColumn('simulator', 'integer', (column) => column.notNull())
    .addColumn('joined_at', 'bigint', (column) => column.notNull())
    .addColumn('seen_at', 'bigint')
    .addColumn('revoked_at', 'bigint')
    .addPrimaryKeyConstraint('device_key', ['team', 'id'])
    .execute()
  await db.schema
    .createTable('invite')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('code_hash', 'text', (column) => column.primaryKey())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('valid_until', 'bigint', (column) => column.notNull())
    .addColumn('used_at', 'bigint')
    .execute()
}

async function meetings(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('meeting')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('event', 'text')
    .addColumn('fictional', 'integer', (column) => column.notNull())
    .addColumn('clock_anchor_server_ms', 'bigint', (column) => column.notNull())
    .addColumn('clock_anchor_meeting_ms', 'bigint', (column) => column.notNull())
    .addColumn('clock_rate', 'double precision', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addColumn('last_seq', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('document')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull().references('meeting.id'))
    .addColumn('document', 'text', (column) => column.notNull())
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .addColumn('saved_at', 'bigint', (column) => column.notNull())
    .addColumn('saved_by', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('document_key', ['meeting', 'document'])
    .execute()
}

async function log(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('entry')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull().references('meeting.id'))
    .addColumn('seq', 'bigint', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('v', 'integer', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('n', 'bigint', (column) => column.notNull())
    .addColumn('person', 'text')
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('at_bound_ms', 'integer', (column) => column.notNull())
    .addColumn('epoch', 'bigint', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('recorded_at', 'bigint', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('entry_key', ['meeting', 'seq'])
    .addUniqueConstraint('entry_id', ['meeting', 'id'])
    .execute()
  await db.schema
    .createTable('tray')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('entry', 'text', (column) => column.notNull())
    .addColumn('received_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('tray_key', ['team', 'device', 'meeting', 'id'])
    .execute()
}

async function laps(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('lap')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull().references('meeting.id'))
    .addColumn('lap_seq', 'bigint', (column) => column.notNull())
    .addColumn('source', 'text', (column) => column.notNull())
    .addColumn('run', 'text', (column) => column.notNull())
    .addColumn('car', 'text', (column) => column.notNull())
    .addColumn('n', 'integer', (column) => column.notNull())
    .addColumn('variant', 'integer', (column) => column.notNull())
    .addColumn('time_ms', 'integer', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('recorded_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('lap_key', ['meeting', 'lap_seq'])
    .addUniqueConstraint('lap_passing', ['meeting', 'source', 'run', 'car', 'n', 'variant'])
    .execute()
  await db.schema
    .createTable('blob')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('media_type', 'text', (column) => column.notNull())
    .addColumn('bytes', 'integer', (column) => column.notNull())
    .addColumn('received_bytes', 'integer', (column) => column.notNull())
    .addColumn('content', isPostgres(db) ? 'bytea' : 'blob', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('blob_key', ['team', 'sha256'])
    .execute()
}

async function installation(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('server_time')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('mark_ms', 'bigint', (column) => column.notNull())
    .addColumn('shift_ms', 'bigint', (column) => column.notNull())
    .addColumn('epoch', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('probe')
    .addColumn('filler', 'text', (column) => column.notNull())
    .execute()
}
