/** `npm run restore -- FILE`: a copy becomes the store; what was the store until then is kept beside it. */
import Database from 'better-sqlite3'
import {
  chmodSync,
  chownSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import type { Terminal } from '../access/captain.ts'
import { BadOption, type Config } from '../config.ts'
import { lockStore } from '../storage/sqlite/lock.ts'
import { carryOver, type CarriedOver } from './carry-over.ts'
import { copyStore, syncFile, syncFolder } from './copy.ts'
import { inspect, inWordsOf } from './inspect.ts'
import { diskSentence, NotDone, refuseDatabase } from './not-done.ts'

/** Nothing is touched before the file was found good and no server runs. */
export async function restore(
  file: string | undefined,
  config: Pick<Config, 'data' | 'database'>,
  out: Terminal,
): Promise<void> {
  refuseDatabase(
    config,
    'pg_restore --clean --if-exists --dbname=… FILE, with every process stopped',
  )
  if (file === undefined) throw new BadOption('Say what to put back: npm run restore -- FILE')
  const copy = resolve(file)
  if (!existsSync(copy)) throw new NotDone(`There is no file ${copy}.`)
  const store = join(config.data, 'pitlamp.db')
  if (existsSync(store) && realpathSync(store) === realpathSync(copy)) {
    throw new NotDone(`${copy} is the store itself. Name a copy of it.`)
  }
  const holding = await inspect(copy)
  const { aside, carried } = putInPlace(copy, store)
  out.write(`${config.data} now holds ${inWordsOf(holding)}, from ${copy}.\n`)
  if (aside !== undefined) {
    out.write(`What was there before is kept in ${aside}. To go back to it:\n`)
    out.write(`  npm run restore -- ${join(aside, basename(store))}\n`)
  }
  out.write(`\n${whatNext(carried)}`)
}

interface Placed {
  readonly aside: string | undefined
  readonly carried: CarriedOver
}

function putInPlace(copy: string, store: string): Placed {
  const staged = `${store}.restoring`
  try {
    mkdirSync(dirname(store), { recursive: true })
    const lock = lockStore(store)
    try {
      rmSync(staged, { force: true })
      copyStore(copy, staged)
      const here = existsSync(store) ? store : undefined
      const carried = carryOver(staged, here)
      giveTo(ownerOf(here ?? dirname(store)), staged)
      syncFile(staged)
      const aside = here && putAside(here)
      renameSync(staged, store)
      syncFolder(dirname(store))
      return { aside, carried }
    } finally {
      rmSync(staged, { force: true })
      lock.release()
    }
  } catch (error) {
    const sentence = diskSentence(error, dirname(store))
    throw sentence === undefined ? error : new NotDone(`Nothing was put back. ${sentence}`)
  }
}

interface Owner {
  readonly uid: number
  readonly gid: number
  /** Who may read and write it, where it is a file. */
  readonly mode: number | undefined
}

function ownerOf(path: string): Owner {
  const found = statSync(path)
  return { uid: found.uid, gid: found.gid, mode: found.isFile() ? found.mode : undefined }
}

/** Whoever puts it back, such as root, need not be who the server runs as. */
function giveTo({ uid, gid, mode }: Owner, file: string): void {
  const own = statSync(file)
  if (own.uid !== uid || own.gid !== gid) chownSync(file, uid, gid)
  if (mode !== undefined) chmodSync(file, mode)
}

/**
 * A folder with a date for its name, which is itself a data folder. The store keeps its own name too until the
 * copy takes that over in one step: whatever is cut off in between, there is a store.
 */
function putAside(store: string): string {
  bringIntoOneFile(store)
  const date = new Date().toISOString().replaceAll(/[:.]/g, '-')
  const aside = join(dirname(store), `before-restore-${date}`)
  mkdirSync(aside)
  try {
    linkOrCopy(store, join(aside, basename(store)))
  } catch (error) {
    rmSync(aside, { recursive: true })
    throw error
  }
  for (const beside of ['-wal', '-shm']) {
    if (existsSync(store + beside))
      renameSync(store + beside, join(aside, basename(store) + beside))
  }
  syncFolder(aside)
  return aside
}

/** What is written ahead goes into the file. A damaged one stays as it is, in its pieces. */
function bringIntoOneFile(store: string): void {
  try {
    const open = new Database(store)
    try {
      open.pragma('wal_checkpoint(TRUNCATE)')
    } finally {
      open.close()
    }
  } catch {
    return
  }
}

/** Some disks, such as memory sticks, give a file one name only. */
function linkOrCopy(from: string, to: string): void {
  try {
    linkSync(from, to)
  } catch {
    copyFileSync(from, to)
    syncFile(to)
  }
}

function whatNext(carried: CarriedOver): string {
  const devices =
    carried === 'clockAndAccess'
      ? 'Devices that belong to the team still do, and those that were taken out stay out.'
      : `Devices that joined since the copy was made join again: on the Team screen, or with npm run invite -- captain.
One that was in the copy and has joined once more since is refused: what it recorded since stays on it, unsent.`
  return `Now start it: npm start

What is recorded in the copy’s meetings and missing from it comes back from the screens. Open each of them, at the
address it had before, and leave it open until nothing on it is shown as kept on this device.
${devices}
Not sent again: meetings made since the copy, with what was recorded in them, which stays on the screens; and drafts
saved since that nobody adopted.
If the screens say that the clock is in doubt, one press of the captain’s settles it.
`
}
