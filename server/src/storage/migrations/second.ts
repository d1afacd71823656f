/** Versions of drafts are kept, and links open the plan to people who have not joined. */
import type { Kysely } from 'kysely'

export async function up(db: Kysely<unknown>): Promise<void> {
  await versions(db)
  await db.schema
    .createTable('plan_link')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull().references('meeting.id'))
    .addColumn('code_hash', 'text', (column) => column.primaryKey())
    .addColumn('made_at', 'bigint', (column) => column.notNull())
    .addColumn('revoked_at', 'bigint')
    .execute()
}

interface Row {
  team: string
  meeting: string
  document: string
  version: number
  content: string
  saved_at: number
  saved_by: string
}

/** Of both tables, only what is carried over. */
interface Moved {
  document: Row
  document_version: Row & { begun_at: number }
}

async function versions(db: Kysely<Moved>): Promise<void> {
  await db.schema
    .createTable('document_version')
    .addColumn('team', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('meeting', 'text', (column) => column.notNull().references('meeting.id'))
    .addColumn('document', 'text', (column) => column.notNull())
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .addColumn('begun_at', 'bigint', (column) => column.notNull())
    .addColumn('saved_at', 'bigint', (column) => column.notNull())
    .addColumn('saved_by', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('document_version_key', ['meeting', 'document', 'version'])
    .execute()
  const columns = [
    ...(['team', 'meeting', 'document', 'version', 'content'] as const),
    ...(['saved_at', 'saved_by'] as const),
  ]
  await db
    .insertInto('document_version')
    .columns([...columns, 'begun_at'])
    .expression(db.selectFrom('document').select([...columns, 'saved_at as begun_at']))
    .execute()
}
