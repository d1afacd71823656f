/** When devices were last seen: written down for those that only ever ask over HTTP as well, once a minute at most. */
const AT_MOST_EVERY_MS = 60_000

export class Seen {
  readonly #now: () => number
  readonly #noted = new Map<string, number>()

  constructor(now: () => number) {
    this.#now = now
  }

  /** True where it is time to write it down again; the captain may have set the clock either way. */
  isNews(device: string): boolean {
    const now = this.#now()
    const before = this.#noted.get(device)
    if (before !== undefined && Math.abs(now - before) < AT_MOST_EVERY_MS) return false
    this.#noted.set(device, now)
    return true
  }
}
