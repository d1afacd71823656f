/**
 * One process a store. The lock is an exclusive transaction on a small file beside it, held as long as this
 * process lives: the operating system lets go of it however the process ends, so it is never stale.
 */
import Database from 'better-sqlite3'
import { StoreInUse } from '../port.ts'

export function lockStore(file: string): { readonly release: () => void } {
  const lock = new Database(`${file}.lock`, { timeout: 0 })
  try {
    lock.pragma('journal_mode = memory')
    lock.exec('begin exclusive')
  } catch (error) {
    lock.close()
    if ((error as { code?: unknown }).code === 'SQLITE_BUSY') throw new StoreInUse(file)
    throw error
  }
  return { release: () => lock.close() }
}
