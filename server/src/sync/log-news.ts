/**
 * What the log has to say, to every screen of the meeting. All of a meeting's screens stand at its head: they
 * were told in the welcome how far the log goes and fetch what they lack. So one message, written once,
 * serves them all. The log is the bus: it does not matter here which process wrote the entries.
 */
import type { RecordedEntry } from '@pitlamp/race'
import type { News } from '../storage/port.ts'
import type { Reads } from '../storage/reads/index.ts'
import type { Io } from './sockets.ts'

export function meetingRoom(meeting: string): string {
  return `meeting ${meeting}`
}

type Told = (meeting: string, entries: readonly RecordedEntry[]) => void

export class LogNews {
  readonly #io: Io
  readonly #reads: Pick<Reads, 'entriesAfter'>
  readonly #told: Told
  /** How far the screens of each meeting were told the log goes. */
  readonly #heads = new Map<string, number>()
  /** Meetings whose log is being read, and whether it has grown since. */
  readonly #reading = new Map<string, boolean>()

  constructor(io: Io, reads: Pick<Reads, 'entriesAfter'>, told: Told) {
    this.#io = io
    this.#reads = reads
    this.#told = told
  }

  /** The meetings that screens are in, as far as is known, and how far those were told the log goes. */
  heads(): ReadonlyMap<string, number> {
    return this.#heads
  }

  /** Where a screen that joins now stands: what was read, or what the others were told, if that is further. */
  headFor(meeting: string, read: number): number {
    const head = this.#heads.get(meeting)
    if (head !== undefined) return head
    this.#heads.set(meeting, read)
    return read
  }

  tell({ meeting, from, to, entries }: News): void {
    const head = this.#heads.get(meeting)
    if (head === undefined || to <= head) return
    if (!this.#io.sockets.adapter.rooms.has(meetingRoom(meeting))) this.#heads.delete(meeting)
    else if (from <= head) this.#push(meeting, entries)
    else void this.#readOn(meeting)
  }

  /** Another process wrote, and what it wrote comes first. What cannot be read now is read with the next news. */
  async #readOn(meeting: string): Promise<void> {
    const isReading = this.#reading.has(meeting)
    this.#reading.set(meeting, true)
    if (isReading) return
    try {
      while (this.#reading.get(meeting) === true) {
        this.#reading.set(meeting, false)
        await this.#readToTheEnd(meeting)
      }
    } catch {
      // The database is out of reach.
    } finally {
      this.#reading.delete(meeting)
    }
  }

  async #readToTheEnd(meeting: string): Promise<void> {
    for (;;) {
      const head = this.#heads.get(meeting)
      if (head === undefined) return
      const page = await this.#reads.entriesAfter(meeting, head)
      if (page.length === 0) return
      this.#push(meeting, page)
    }
  }

  /** Those the screens lack; the first of `entries` is no later than the next of them. */
  #push(meeting: string, entries: readonly RecordedEntry[]): void {
    const from = this.#heads.get(meeting)
    if (from === undefined) return
    const news = entries.filter((entry) => entry.seq > from)
    const to = news.at(-1)?.seq
    if (to === undefined) return
    this.#heads.set(meeting, to)
    this.#io.to(meetingRoom(meeting)).emit('push', { meeting, from, to, entries: news })
    this.#told(meeting, news)
  }
}
