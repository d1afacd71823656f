/** Migrations under a lock: several processes start at once, and two that make the same table break each other. */
import type { Kysely } from 'kysely'
import pg from 'pg'
import { MIGRATION_NAMES, migrate } from '../migrations/index.ts'
import type { Tables } from '../tables.ts'
import { settingsFor } from './connect.ts'

const MIGRATING = 3_610_411

/**
 * Steps only ever add, so a process of the version before goes on beside one of the next, and starts again on
 * tables that have more than it knows.
 */
export async function migrateOnce(url: string, db: Kysely<Tables>): Promise<void> {
  // Whoever waits for the lock waits for as long as the steps of another take.
  const lock = new pg.Client({ ...settingsFor(url), query_timeout: undefined })
  lock.on('error', () => undefined)
  await lock.connect()
  try {
    await lock.query('select pg_advisory_lock($1)', [MIGRATING])
    if ((await missingIn(lock)).length > 0) await migrate(db)
  } finally {
    await lock.end()
  }
}

async function missingIn(client: pg.Client): Promise<readonly string[]> {
  const { rows } = await client.query<{ made: boolean }>(
    `select to_regclass('kysely_migration') is not null as made`,
  )
  if (rows[0]?.made !== true) return MIGRATION_NAMES
  const done = await client.query<{ name: string }>('select name from kysely_migration')
  const names = new Set(done.rows.map(({ name }) => name))
  return MIGRATION_NAMES.filter((name) => !names.has(name))
}
