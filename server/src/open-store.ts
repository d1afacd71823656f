/** The store, and the server's clock that is kept in it: a file in the data folder, or a PostgreSQL database. */
import { join } from 'node:path'
import type { Neighbours, Storage } from './storage/port.ts'
import { openSqlite, type SqliteOptions } from './storage/sqlite/open.ts'
import { startSharedTime } from './time/share-time.ts'
import { ServerTime, SYSTEM_CLOCKS, type Clocks } from './time/server-time.ts'

export interface StoreOptions {
  /** The data folder. */
  readonly data: string
  /** `postgres://…`, in place of the file. */
  readonly database?: string
  readonly clocks?: Clocks
  /** See WriterSettings. */
  readonly forTests?: SqliteOptions['forTests']
}

export interface OpenedStore {
  readonly storage: Storage
  readonly time: ServerTime
}

export async function openStore(options: StoreOptions): Promise<OpenedStore> {
  const { database } = options
  return database === undefined ? openFile(options) : openDatabase(database)
}

async function openFile({
  data,
  forTests,
  clocks = SYSTEM_CLOCKS,
}: StoreOptions): Promise<OpenedStore> {
  const started: { time?: ServerTime } = {}
  const storage = await openSqlite({
    file: join(data, 'pitlamp.db'),
    mark: () => started.time?.kept() ?? { markMs: 0, epoch: 0 },
    ...(forTests && { forTests }),
  })
  const time = new ServerTime(clocks, await storage.read.keptTime())
  started.time = time
  await storage.run('keepTime', time.kept())
  return { storage, time }
}

async function openDatabase(url: string): Promise<OpenedStore> {
  const { openPostgres } = await import('./storage/postgres/open.ts')
  const storage = await openPostgres({ url })
  try {
    return { storage, time: await startSharedTime(storage, neighboursOf(storage)) }
  } catch (error) {
    await storage.close()
    throw error
  }
}

function neighboursOf({ neighbours }: Storage): Neighbours {
  if (!neighbours) throw new Error('A database is shared.')
  return neighbours
}
