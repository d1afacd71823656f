/** A store in one SQLite file: a writer thread beside a connection that only reads. */
import { once } from 'node:events'
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Answers } from '../commands/index.ts'
import { newsOf, type Answered } from '../news.ts'
import type { News, Storage } from '../port.ts'
import { openReader } from '../reader.ts'
import { lockStore } from './lock.ts'
import type { WriterSettings } from './messages.ts'
import { startThread } from '../../start-thread.ts'
import { Writer, type Mark } from './writer.ts'

export interface SqliteOptions {
  readonly file: string
  /** The server's clock, kept with every transaction. */
  readonly mark: () => Mark
  /** Only tests change these: see WriterSettings. */
  readonly forTests?: Partial<Omit<WriterSettings, 'file'>>
}

const WRITER = {
  name: 'writer-thread',
  source: 'storage/writer-thread',
  external: ['better-sqlite3'],
} as const

export async function openSqlite({ file, mark, forTests }: SqliteOptions): Promise<Storage> {
  mkdirSync(dirname(file), { recursive: true })
  const lock = lockStore(file)
  try {
    const settings: WriterSettings = { file, synchronous: 'FULL', ...forTests }
    const thread = await startThread(WRITER, settings)
    await once(thread, 'message')
    const reader = await openReader({ file })
    const listeners: ((news: News) => void)[] = []
    const onCommit = (answered: readonly Answered[]) => {
      for (const news of newsOf(answered)) for (const listener of listeners) listener(news)
    }
    const writer = new Writer({ thread, mark, onCommit })
    const close = async () => {
      await writer.close()
      await reader.close()
      lock.release()
    }
    let closing: Promise<void> | undefined
    return {
      run: async (name, input) => (await writer.run(name, input)) as Answers[typeof name],
      read: reader.read,
      where: { file },
      onNews: (listener) => listeners.push(listener),
      standing: () => writer.standing(),
      close: () => (closing ??= close()),
    }
  } catch (error) {
    lock.release()
    throw error
  }
}
