/** Kysely over better-sqlite3, with two differences: statements stay prepared, and a transaction is IMMEDIATE. */
import Database from 'better-sqlite3'
import {
  CompiledQuery,
  Kysely,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type SqliteDatabase,
} from 'kysely'
import type { Tables } from '../tables.ts'

const STATEMENTS_KEPT = 400

/** Over a connection of its own that cannot write; `destroy` closes it. */
export function kyselyReading(file: string): Kysely<Tables> {
  return kyselyOver(new Database(file, { readonly: true }))
}

export function kyselyOver(file: Database.Database): Kysely<Tables> {
  const database = keepingStatements(file)
  class Dialect extends SqliteDialect {
    override createDriver(): SqliteDriver {
      return new ImmediateDriver(file, database)
    }

    override createAdapter(): SqliteAdapter {
      return new TransactionalDdl()
    }
  }
  return new Kysely<Tables>({ dialect: new Dialect({ database }) })
}

/** A start that is killed half-way through making the tables leaves none. */
class TransactionalDdl extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}

class ImmediateDriver extends SqliteDriver {
  readonly #file: Database.Database

  constructor(file: Database.Database, database: SqliteDatabase) {
    super({ database })
    this.#file = file
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'))
  }

  /** SQLite rolls back by itself where the disk is full: then there is nothing left to roll back. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#file.inTransaction) await connection.executeQuery(CompiledQuery.raw('rollback'))
  }
}

function keepingStatements(file: Database.Database): SqliteDatabase {
  const kept = new Map<string, Database.Statement>()
  return {
    prepare(sql) {
      const known = kept.get(sql)
      if (known) return known
      if (kept.size >= STATEMENTS_KEPT) kept.clear()
      const statement = file.prepare(sql)
      kept.set(sql, statement)
      return statement
    },
    close: () => file.close(),
  }
}
