/** The server's table of entries, made by its own migrations, and the bare insert into it. */
import type { Database } from 'better-sqlite3'
import { migrate } from '../../../server/src/storage/migrations/index.ts'
import { kyselyOver } from '../../../server/src/storage/sqlite/dialect.ts'

const COLUMNS =
  'team, meeting, seq, id, v, device, n, person, at, at_bound_ms, epoch, kind, body, recorded_at, role'
const VALUES =
  "'bench', 'bench', @seq, @id, 1, @device, @n, null, @at, 0, 1, @kind, @body, @at, 'pitWall'"

/** Durable as the server is: written ahead, synced at every commit. */
export async function makeTables(file: Database): Promise<void> {
  file.pragma('journal_mode = WAL')
  file.pragma('synchronous = FULL')
  await migrate(kyselyOver(file))
  file.exec(`insert into team values ('bench', 'Bench', 0)`)
  file.exec(`insert into meeting values ('bench', 'bench', 'Bench', null, 0, 0, 0, 1, 0, 0)`)
}

export function insertInto(file: Database): (entry: object) => void {
  const statement = file.prepare(`insert into entry (${COLUMNS}) values (${VALUES})`)
  return (entry) => void statement.run(entry)
}
