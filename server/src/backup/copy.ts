/** A whole store copied at one moment, while another process may be writing to it. */
import Database from 'better-sqlite3'
import { closeSync, fsyncSync, openSync } from 'node:fs'

/** A copy is as secret as the store. */
const OWNER_ONLY = 0o600

/**
 * `VACUUM INTO` reads within one transaction: what it writes is the store as it stood when it began, however
 * much is written meanwhile, and one file without a log beside it. `to` must not be there. Synced when it returns.
 */
export function copyStore(from: string, to: string): void {
  closeSync(openSync(to, 'wx', OWNER_ONLY))
  const store = new Database(from, { readonly: true, fileMustExist: true })
  try {
    store.prepare('vacuum into ?').run(to)
  } finally {
    store.close()
  }
  syncFile(to)
}

export function syncFile(file: string): void {
  sync(file, 'r+')
}

/** So that a name outlives a power cut. Windows keeps names by itself and opens no folder. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') sync(folder, 'r')
}

function sync(path: string, flags: 'r' | 'r+'): void {
  const open = openSync(path, flags)
  try {
    fsyncSync(open)
  } finally {
    closeSync(open)
  }
}
