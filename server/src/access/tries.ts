/** Wrong typed codes by address: after five the address waits ten minutes. */
export const TRIES = 5
export const PAUSE_MS = 600_000
const ADDRESSES_KEPT = 10_000

interface Count {
  readonly wrong: number
  readonly until: number
}

export interface CountsTries {
  readonly begin: (address: string) => boolean | Promise<boolean>
  readonly succeeded: (address: string) => void | Promise<void>
}

/** Of one process that is alone. */
export class Tries implements CountsTries {
  readonly #now: () => number
  readonly #counts = new Map<string, Count>()

  constructor(now: () => number) {
    this.#now = now
  }

  /** Counts a try before its outcome is known, so that many at once gain nothing. False: this address waits. */
  begin(address: string): boolean {
    const now = this.#now()
    const before = this.#counts.get(address)
    const wrong = before && before.until > now ? before.wrong : 0
    if (wrong >= TRIES) return false
    this.#counts.delete(address)
    this.#counts.set(address, { wrong: wrong + 1, until: now + PAUSE_MS })
    this.#forgetOldest()
    return true
  }

  /** The code was right: what came before is forgotten. */
  succeeded(address: string): void {
    this.#counts.delete(address)
  }

  #forgetOldest(): void {
    if (this.#counts.size <= ADDRESSES_KEPT) return
    const oldest = this.#counts.keys().next().value
    if (oldest !== undefined) this.#counts.delete(oldest)
  }
}
