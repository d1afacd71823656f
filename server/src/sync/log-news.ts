/**
 * What the log has to say, to every screen of the meeting. All of a meeting's screens stand at its head: they
 * were told in the welcome how far the log goes and fetch what they lack. So one message, written once,
 * serves them all. The log is the bus: it does not matter here which process wrote the entries.
 */
import type { News } from '../storage/port.ts'
import type { Io } from './sockets.ts'

export function meetingRoom(meeting: string): string {
  return `meeting ${meeting}`
}

export class LogNews {
  readonly #io: Io
  /** How far the screens of each meeting were told the log goes. */
  readonly #heads = new Map<string, number>()

  constructor(io: Io) {
    this.#io = io
  }

  /** Where a screen that joins now stands: what was read, or what the others were told, if that is further. */
  headFor(meeting: string, read: number): number {
    const head = this.#heads.get(meeting)
    if (head !== undefined) return head
    this.#heads.set(meeting, read)
    return read
  }

  tell({ meeting, to, entries }: News): void {
    const from = this.#heads.get(meeting)
    if (from === undefined || to <= from) return
    const room = meetingRoom(meeting)
    if (!this.#io.sockets.adapter.rooms.has(room)) {
      this.#heads.delete(meeting)
      return
    }
    this.#heads.set(meeting, to)
    const news = entries.filter((entry) => entry.seq > from)
    this.#io.to(room).emit('push', { meeting, from, to, entries: news })
  }
}
