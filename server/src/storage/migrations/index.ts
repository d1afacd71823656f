/** Every step from an empty database to today's tables, in order. A released step is never changed: add one. */
import { Migrator, type Kysely, type Migration } from 'kysely'
import type { Tables } from '../tables.ts'
import { up as first } from './first.ts'
import { up as second } from './second.ts'
import { up as third } from './third.ts'
import { up as fourth } from './fourth.ts'

const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-first': { up: first },
  '0002-second': { up: second },
  '0003-third': { up: third },
  '0004-fourth': { up: fourth },
}

export const MIGRATION_NAMES: readonly string[] = Object.keys(MIGRATIONS)

/**
 * Brings the database up to date, or as far as the step named. The caller sees to it that no second process
 * migrates at the same time.
 */
export async function migrate(db: Kysely<Tables>, upTo?: string): Promise<void> {
  const migrator = new Migrator({
    db,
    provider: { getMigrations: () => Promise.resolve({ ...MIGRATIONS }) },
  })
  const { error } = await (upTo === undefined
    ? migrator.migrateToLatest()
    : migrator.migrateTo(upTo))
  if (error instanceof Error) throw error
  if (error !== undefined) throw new Error(`The tables could not be made: ${JSON.stringify(error)}`)
}
