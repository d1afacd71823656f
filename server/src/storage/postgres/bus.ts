/**
 * What the processes say to each other, by NOTIFY on a connection of their own: inside a writing transaction it
 * would make every commit of the database wait for the one before. What is said within a turn goes out at once,
 * and what is said meanwhile with the next.
 */
import * as z from 'zod/mini'
import { recordedEntrySchema, uuidV7 } from '@pitlamp/race'
import type { Line } from './line.ts'
import type { News, Word } from '../port.ts'

/**
 * Processes that say it in another shape are on another channel, and look for what they do not hear: but not for who
 * is there, which they show late, or until something else changes.
 */
export const CHANNEL = 'pitlamp_2'
/** PostgreSQL takes less than 8,000 bytes. */
const PAYLOAD_LIMIT_BYTES = 7_900

/** More entries are longer than that, with what stands around their bodies alone. */
const ENTRIES_LIMIT = 40

type Said = News | Word

export class Bus {
  readonly #line: Pick<Line, 'query'>
  /** JSON, so that a word that waits already is said once. */
  #waiting = new Set<string>()
  #sending = false

  constructor(line: Pick<Line, 'query'>) {
    this.#line = line
  }

  say(said: Said): void {
    this.#waiting.add(written(said))
    if (this.#sending) return
    this.#sending = true
    setImmediate(() => void this.#sendAll())
  }

  /** What cannot be sent is lost: whoever listens looks for itself once a second. */
  async #sendAll(): Promise<void> {
    while (this.#waiting.size > 0) {
      const payloads = payloadsOf(this.#waiting)
      this.#waiting = new Set()
      for (const payload of payloads) {
        await this.#line.query('select pg_notify($1, $2)', [CHANNEL, payload]).catch(() => [])
      }
    }
    this.#sending = false
  }
}

const seqSchema = z.int().check(z.minimum(0))
const saidSchema = z.union([
  z.object({ say: z.enum(['device', 'clock', 'missed']) }),
  z.object({ say: z.literal('presence'), meeting: uuidV7 }),
  z.object({
    meeting: uuidV7,
    from: seqSchema,
    to: seqSchema,
    entries: z.array(recordedEntrySchema),
  }),
])

/** Anybody who may use the database may speak on the channel: what is none of ours is passed over. */
export function heardIn(payload: string): readonly Said[] {
  return itemsIn(payload).flatMap((item): readonly Said[] => {
    const { data } = saidSchema.safeParse(item)
    return data ? [data] : []
  })
}

function itemsIn(payload: string): readonly unknown[] {
  try {
    return JSON.parse(`[${payload}]`) as readonly unknown[]
  } catch {
    return []
  }
}

/** News that are too long say only how far the log has come. */
function written(said: Said): string {
  if ('say' in said) return JSON.stringify(said)
  const short: News = { ...said, from: said.to, entries: [] }
  if (said.entries.length > ENTRIES_LIMIT) return JSON.stringify(short)
  const text = JSON.stringify(said)
  return Buffer.byteLength(text) < PAYLOAD_LIMIT_BYTES ? text : JSON.stringify(short)
}

/** As few as they fit into: lists of JSON values. */
function payloadsOf(texts: Iterable<string>): readonly string[] {
  const parts: string[][] = []
  let bytes = Infinity
  for (const text of texts) {
    const more = Buffer.byteLength(text) + 1
    if (bytes + more > PAYLOAD_LIMIT_BYTES) bytes = 0
    if (bytes === 0) parts.push([])
    parts.at(-1)?.push(text)
    bytes += more
  }
  return parts.map((part) => part.join(','))
}
