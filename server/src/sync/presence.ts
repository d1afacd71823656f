/**
 * Which screens are there and how they stand, and which crew devices have the wall. Told at most once a second a
 * meeting: two hundred arrive at once after a restart. Where other processes serve screens of the same meeting,
 * each keeps its own in the database, and all of them are told.
 */
import type { Presence as Said } from '@pitlamp/contract'
import { roleIn } from '../access/role-in.ts'
import type { Reads } from '../storage/reads/index.ts'
import type { Elsewhere } from './elsewhere.ts'
import type { Io } from './sockets.ts'
import { meetingRoom } from './log-news.ts'

const AT_MOST_EVERY_MS = 1_000

export type Screen = Said['screens'][number]

export class Presence {
  readonly #io: Io
  readonly #reads: Pick<Reads, 'wallTakenIn'>
  readonly #elsewhere: Elsewhere | undefined
  readonly #waiting = new Map<string, NodeJS.Timeout>()
  /** Meetings whose screens here are to be shown to the other processes. */
  readonly #unshown = new Set<string>()

  constructor(io: Io, reads: Pick<Reads, 'wallTakenIn'>, elsewhere?: Elsewhere) {
    this.#io = io
    this.#reads = reads
    this.#elsewhere = elsewhere
  }

  /** Something is different here. */
  changed(meeting: string): void {
    if (this.#elsewhere) this.#unshown.add(meeting)
    this.changedElsewhere(meeting)
  }

  changedElsewhere(meeting: string): void {
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
    if (this.#unshown.delete(meeting))
      await this.#elsewhere?.show(meeting, this.#screensIn(meeting))
    const [first] = this.#socketsIn(meeting)
    if (!first) return
    const taken = await this.#reads.wallTakenIn(first.data.holder.team.id, meeting)
    const others = (await this.#elsewhere?.screensIn(meeting)) ?? []
    const screens = new Map(others.map((screen) => [screen.device, screen]))
    for (const screen of this.#screensIn(meeting)) screens.set(screen.device, screen)
    this.#io.to(meetingRoom(meeting)).emit('presence', {
      meeting,
      screens: [...screens.values()],
      wallTaken: taken.map(({ id, name }) => ({ device: id, name })),
    })
  }

  #screensIn(meeting: string): readonly Screen[] {
    const screens = new Map<string, Screen>()
    for (const { data } of this.#socketsIn(meeting)) {
      const { id, name } = data.holder.device
      const { report = screens.get(id)?.report } = data
      const role = roleIn(data.holder.device, meeting)
      screens.set(id, { device: id, name, role, ...(report && { report }) })
    }
    return [...screens.values()]
  }

  #socketsIn(meeting: string) {
    const ids = this.#io.sockets.adapter.rooms.get(meetingRoom(meeting)) ?? []
    return [...ids].flatMap((id) => this.#io.sockets.sockets.get(id) ?? [])
  }
}
