/** A connection that only reads, opened wherever it is used: beside the writer, or in a thread of its own. */
import { readsOver, type Reads } from './reads/index.ts'

/** What a thread is told, so that it can open a reader of its own. */
export type Where = { readonly file: string } | { readonly url: string }

export interface Reader {
  readonly read: Reads
  readonly close: () => Promise<void>
}

export async function openReader(where: Where): Promise<Reader> {
  const db = await connectedTo(where)
  return { read: readsOver(db), close: () => db.destroy() }
}

/** Whoever has a file does without the parts for a database, and a database without those for a file. */
async function connectedTo(where: Where) {
  if ('url' in where) return (await import('./postgres/connect.ts')).kyselyOver(where.url, 1)
  return (await import('./sqlite/dialect.ts')).kyselyReading(where.file)
}
