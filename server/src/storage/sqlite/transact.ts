/**
 * One transaction for everything that waited. A command that fails is undone alone and answered with its
 * fault; a disk that takes nothing undoes them all.
 */
import type { Kysely } from 'kysely'
import type { Trx } from '../commands/context.ts'
import { groups, perform, type Command } from '../commands/index.ts'
import { raiseMark } from '../commands/server-time.ts'
import type { Tables } from '../tables.ts'

export type Result =
  { readonly answer: unknown } | { readonly notSaved: string } | { readonly fault: string }

export interface Batch {
  readonly commands: readonly Command[]
  readonly markMs: number
  readonly epoch: number
}

/** One result for each command, in order. Never throws. */
export async function transact(db: Kysely<Tables>, batch: Batch): Promise<readonly Result[]> {
  const { commands } = batch
  try {
    return await db.transaction().execute((trx) => performAll(trx, batch))
  } catch (error) {
    if (isOfTheDisk(error)) return commands.map(() => ({ notSaved: words(error) }))
    if (commands.length === 1) return [{ fault: words(error) }]
  }
  // One of them is at fault; each is tried in a transaction of its own, and only that one is undone.
  const results: Result[] = []
  for (const command of commands) {
    results.push(...(await transact(db, { ...batch, commands: [command] })))
  }
  return results
}

async function performAll(trx: Trx, batch: Batch): Promise<readonly Result[]> {
  const results: Result[] = []
  for (const group of groups(batch.commands)) {
    for (const answer of await perform(trx, group)) results.push({ answer })
  }
  await raiseMark(trx, batch)
  return results
}

const DISK = /^SQLITE_(FULL|IOERR|READONLY|CANTOPEN|CORRUPT|NOTADB|PERM|BUSY|LOCKED|AUTH)/

function isOfTheDisk(error: unknown): boolean {
  const { code } = error as { readonly code?: unknown }
  return typeof code === 'string' && DISK.test(code)
}

function words(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
