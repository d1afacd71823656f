/**
 * Which screens are there and how they stand, and which crew devices have the wall. Told at most once a second a
 * meeting: two hundred arrive at once after a restart.
 */
import type { Presence as Said } from '@pitlamp/contract'
import { roleIn } from '../access/role-in.ts'
import type { Reads } from '../storage/reads/index.ts'
import type { Io } from './sockets.ts'
import { meetingRoom } from './log-news.ts'

const AT_MOST_EVERY_MS = 1_000

export class Presence {
  readonly #io: Io
  readonly #reads: Pick<Reads, 'wallTakenIn'>
  readonly #waiting = new Map<string, NodeJS.Timeout>()

  constructor(io: Io, reads: Pick<Reads, 'wallTakenIn'>) {
    this.#io = io
    this.#reads = reads
  }

  changed(meeting: string): void {
    if (this.#waiting.has(meeting)) return
    const timer = setTimeout(() => {
      this.#waiting.delete(meeting)
      this.#tell(meeting).catch(() => undefined)
    }, AT_MOST_EVERY_MS)
    this.#waiting.set(meeting, timer.unref())
  }

  close(): void {
    for (const timer of this.#waiting.values()) clearTimeout(timer)
    this.#waiting.clear()
  }

  async #tell(meeting: string): Promise<void> {
    const [first] = this.#socketsIn(meeting)
    if (!first) return
    const taken = await this.#reads.wallTakenIn(first.data.holder.team.id, meeting)
    const screens = new Map<string, Said['screens'][number]>()
    for (const { data } of this.#socketsIn(meeting)) {
      const { id, name } = data.holder.device
      const { report = screens.get(id)?.report } = data
      const role = roleIn(data.holder.device, meeting)
      screens.set(id, { device: id, name, role, ...(report && { report }) })
    }
    this.#io.to(meetingRoom(meeting)).emit('presence', {
      meeting,
      screens: [...screens.values()],
      wallTaken: taken.map(({ id, name }) => ({ device: id, name })),
    })
  }

  #socketsIn(meeting: string) {
    const ids = this.#io.sockets.adapter.rooms.get(meetingRoom(meeting)) ?? []
    return [...ids].flatMap((id) => this.#io.sockets.sockets.get(id) ?? [])
  }
}
