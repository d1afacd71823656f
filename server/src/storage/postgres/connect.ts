/** Connections to PostgreSQL, and Kysely over them. */
import { CompiledQuery, Kysely, PostgresDialect, type DatabaseConnection } from 'kysely'
import pg from 'pg'
import type { Tables } from '../tables.ts'

/** A database that does not answer for so long is out of reach. Common practice, no source. */
const CONNECTED_WITHIN_MS = 5_000
const ANSWERED_WITHIN_MS = 10_000

type Parsers = (type: number, format?: 'text') => (text: string) => unknown
const usual = pg.types.getTypeParser as Parsers
const INT8 = 20
/** Every whole number of ours is far below 2⁵³: it is read as a number, as SQLite gives it. */
const numbers: Parsers = (type, format) => (type === INT8 ? Number : usual(type, format))
const types = { getTypeParser: numbers } as pg.CustomTypesConfig

export function settingsFor(url: string): pg.ClientConfig {
  return {
    connectionString: url,
    types,
    application_name: 'pitlamp',
    keepAlive: true,
    connectionTimeoutMillis: CONNECTED_WITHIN_MS,
    query_timeout: ANSWERED_WITHIN_MS,
    // A machine that lost its power in the middle of a transaction holds nobody up for longer.
    idle_in_transaction_session_timeout: ANSWERED_WITHIN_MS,
  }
}

/** At most `most` connections at once, opened as they are needed and opened again when they are lost. */
export function kyselyOver(url: string, most: number): Kysely<Tables> {
  const pool = new pg.Pool({ ...settingsFor(url), max: most })
  // One that idles and is lost is replaced; one in use tells whoever uses it.
  pool.on('error', () => undefined)
  return new Kysely<Tables>({
    dialect: new PostgresDialect({ pool, onCreateConnection: waitForTheDisk }),
  })
}

/** What is answered is on the disk, whatever the database is set to; a replica that is waited for still is. */
async function waitForTheDisk(connection: DatabaseConnection): Promise<void> {
  await connection.executeQuery(
    CompiledQuery.raw(
      `select set_config('synchronous_commit', 'on', false)
       where current_setting('synchronous_commit') = 'off'`,
    ),
  )
}
