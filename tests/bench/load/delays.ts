/** How long presses take to the screens, by one clock. */
import { setTimeout as sleep } from 'node:timers/promises'

export interface Measured {
  readonly p50Ms: number
  readonly p99Ms: number
  readonly deliveries: number
  readonly expected: number
  /** Milliseconds since 1970 between which the presses were made. */
  readonly presses: number
}

export class Delays {
  readonly #sentAt = new Map<string, number>()
  readonly #delays: number[] = []

  sent(id: string): void {
    this.#sentAt.set(id, performance.now())
  }

  readonly heard = (ids: readonly string[]): void => {
    const now = performance.now()
    for (const id of ids) {
      const sent = this.#sentAt.get(id)
      if (sent !== undefined) this.#delays.push(now - sent)
    }
  }

  /** Until everything has come, or for so long. */
  async allHeard(expected: number, withinMs: number): Promise<void> {
    const until = performance.now() + withinMs
    while (this.#delays.length < expected && performance.now() < until) await sleep(20)
  }

  measured(presses: number, expected: number): Measured {
    const sorted = [...this.#delays].sort((a, b) => a - b)
    const at = (part: number) => sorted[Math.floor((sorted.length - 1) * part)] ?? Number.NaN
    return { p50Ms: at(0.5), p99Ms: at(0.99), deliveries: sorted.length, expected, presses }
  }
}
