/** The few places where the databases differ ask here. */
import { PostgresAdapter, sql, type QueryExecutorProvider } from 'kysely'

export function isPostgres(db: QueryExecutorProvider): boolean {
  return db.getExecutor().adapter instanceof PostgresAdapter
}

/**
 * Rows that are read to be changed, or to be changed by: no other process touches them until this transaction
 * ends, and what is read is the newest. SQLite has one writer at a time anyway. Whoever locks several rows of a
 * table does so in the order of their ids, or two processes wait for each other.
 */
export function held<Q extends { forNoKeyUpdate(): Q }>(db: QueryExecutorProvider, query: Q): Q {
  return isPostgres(db) ? query.forNoKeyUpdate() : query
}

const ALONE = 3_610_412

/** Until this transaction ends no other that asks for this goes on: for what has no rows yet that could be locked. */
export async function alone(db: QueryExecutorProvider): Promise<void> {
  if (isPostgres(db)) await sql`select pg_advisory_xact_lock(${ALONE})`.execute(db)
}
