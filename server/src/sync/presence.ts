/** Which screens are there. Told at most once a second a meeting: two hundred arrive at once after a restart. */
import type { Io } from './sockets.ts'
import type { Role } from '@pitlamp/race'
import { meetingRoom } from './log-news.ts'

const AT_MOST_EVERY_MS = 1_000

export class Presence {
  readonly #io: Io
  readonly #waiting = new Map<string, NodeJS.Timeout>()

  constructor(io: Io) {
    this.#io = io
  }

  changed(meeting: string): void {
    if (this.#waiting.has(meeting)) return
    const timer = setTimeout(() => {
      this.#waiting.delete(meeting)
      this.#tell(meeting)
    }, AT_MOST_EVERY_MS)
    this.#waiting.set(meeting, timer.unref())
  }

  close(): void {
    for (const timer of this.#waiting.values()) clearTimeout(timer)
    this.#waiting.clear()
  }

  #tell(meeting: string): void {
    const room = meetingRoom(meeting)
    const screens = new Map<string, { device: string; name: string; role: Role }>()
    for (const id of this.#io.sockets.adapter.rooms.get(room) ?? []) {
      const device = this.#io.sockets.sockets.get(id)?.data.holder.device
      if (device)
        screens.set(device.id, { device: device.id, name: device.name, role: device.role })
    }
    this.#io.to(room).emit('presence', { meeting, screens: [...screens.values()] })
  }
}
