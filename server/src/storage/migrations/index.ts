/** Every step from an empty database to today's tables, in order. A released step is never changed: add one. */
import { Migrator, type Kysely, type Migration } from 'kysely'
import type { Tables } from '../tables.ts'
import { up as first } from './first.ts'

const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-first': { up: first },
}

/** Brings the database up to date. The caller sees to it that no second process migrates at the same time. */
export async function migrate(db: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({
    db,
    provider: { getMigrations: () => Promise.resolve({ ...MIGRATIONS }) },
  })
  const { error } = await migrator.migrateToLatest()
  if (error instanceof Error) throw error
  if (error !== undefined) throw new Error(`The tables could not be made: ${JSON.stringify(error)}`)
}
