/**
 * Hints between the processes, by NOTIFY on a connection of their own: inside a writing transaction it would
 * make every commit of the database wait for the one before. What is said within a turn goes out at once, and
 * what is said meanwhile with the next.
 */
import type { Line } from './line.ts'
import type { Word } from '../port.ts'

export const CHANNEL = 'pitlamp'
/** PostgreSQL takes less than 8,000 bytes; ids and names of words are ASCII. */
const PAYLOAD_LIMIT = 7_000

/** Meeting → how far its log has come. */
type Heads = readonly (readonly [meeting: string, to: number])[]
interface Message {
  readonly process: string
  readonly heads: Heads
  readonly words: readonly Word[]
}
export type Heard = Pick<Message, 'heads' | 'words'>

export class Bus {
  readonly #line: Line
  readonly #process: string
  readonly #heads = new Map<string, number>()
  readonly #words = new Map<string, Word>()
  #sending = false

  constructor(line: Line, process: string) {
    this.#line = line
    this.#process = process
  }

  sayHead(meeting: string, to: number): void {
    this.#heads.set(meeting, to)
    this.#send()
  }

  say(word: Word): void {
    this.#words.set(JSON.stringify(word), word)
    this.#send()
  }

  /** Undefined for what this process said itself. */
  read(payload: string): Heard | undefined {
    const message = JSON.parse(payload) as Message
    return message.process === this.#process ? undefined : message
  }

  #send(): void {
    if (this.#sending) return
    this.#sending = true
    setImmediate(() => void this.#sendAll())
  }

  /** What cannot be sent is lost: whoever listens looks for itself once a second. */
  async #sendAll(): Promise<void> {
    while (this.#heads.size > 0 || this.#words.size > 0) {
      for (const payload of this.#payloads()) {
        await this.#line.query('select pg_notify($1, $2)', [CHANNEL, payload]).catch(() => [])
      }
    }
    this.#sending = false
  }

  #payloads(): readonly string[] {
    const made: string[] = []
    const waiting = [...this.#heads].map((head) => ({ head })) as {
      head?: [string, number]
      word?: Word
    }[]
    waiting.push(...[...this.#words.values()].map((word) => ({ word })))
    this.#heads.clear()
    this.#words.clear()
    let heads: (readonly [string, number])[] = []
    let words: Word[] = []
    let length = 0
    const finish = () => {
      made.push(JSON.stringify({ process: this.#process, heads, words } satisfies Message))
      ;[heads, words, length] = [[], [], 0]
    }
    for (const one of waiting) {
      const more = JSON.stringify(one).length
      if (length + more > PAYLOAD_LIMIT) finish()
      length += more
      if (one.head) heads.push(one.head)
      if (one.word) words.push(one.word)
    }
    finish()
    return made
  }
}
