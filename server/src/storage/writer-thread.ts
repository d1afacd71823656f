/**
 * The thread that owns the write connection. It takes everything that waits, writes it in one transaction
 * with one sync, answers in order, and takes what has come meanwhile. There is no timed window: gathering until
 * `setImmediate` is enough, and a slow disk makes its own batches.
 */
import Database from 'better-sqlite3'
import type { Kysely } from 'kysely'
import { parentPort, workerData } from 'node:worker_threads'
import { migrate } from './migrations/index.ts'
import { kyselyOver } from './sqlite/dialect.ts'
import type { Asked, FromWriter, ToWriter, WriterSettings } from './sqlite/messages.ts'
import { transact } from './sqlite/transact.ts'
import type { Tables } from './tables.ts'

const port = parentPort
if (!port) throw new Error('The writer runs as a thread.')

let waiting: Asked[] = []
let latest = { markMs: 0, epoch: 0 }
let busy = false
let closing = false
/**
 * Held until the thread is gone: from Node 24.19 on a statement that is collected while nothing runs may end the
 * process, where better-sqlite3 12 was compiled for it (https://github.com/nodejs/node/issues/65446).
 */
let held: Kysely<Tables> | undefined

void start(workerData as WriterSettings)

async function start(settings: WriterSettings): Promise<void> {
  const db = await open(settings)
  port?.on('message', (text: string) => {
    const message = JSON.parse(text) as ToWriter
    if (message.say === 'close') closing = true
    else {
      waiting.push(...message.asked)
      latest = message
    }
    if (busy) return
    busy = true
    setImmediate(() => void work(db))
  })
  say({ say: 'ready' })
}

async function work(db: Kysely<Tables>): Promise<void> {
  while (waiting.length > 0) {
    const commands = waiting
    waiting = []
    const results = await transact(db, { commands, ...latest })
    const outcomes = commands.map(({ ask }, index) => ({ ask, ...must(results[index]) }))
    say({ say: 'answered', outcomes })
    await new Promise((gathered) => setImmediate(gathered))
  }
  busy = false
  if (!closing) return
  await db.destroy()
  say({ say: 'closed' })
  port?.close()
}

function say(message: FromWriter): void {
  port?.postMessage(JSON.stringify(message))
}

async function open({ file, synchronous, maxPages }: WriterSettings): Promise<Kysely<Tables>> {
  const connection = new Database(file)
  // Not by `pragma`: that makes statements that nobody holds.
  connection.exec(`pragma journal_mode = WAL; pragma synchronous = ${synchronous};`)
  connection.exec('pragma foreign_keys = ON')
  held = kyselyOver(connection)
  await migrate(held)
  if (maxPages !== undefined) connection.exec(`pragma max_page_count = ${String(maxPages)}`)
  return held
}

function must<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('Every command has its result.')
  return value
}
