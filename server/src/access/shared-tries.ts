/** Wrong codes by address, counted for all processes over one database. */
import type { Storage } from '../storage/port.ts'
import { hashOf } from './tokens.ts'
import { PAUSE_MS, TRIES, type CountsTries } from './tries.ts'

export class SharedTries implements CountsTries {
  readonly #storage: Pick<Storage, 'run'>
  readonly #now: () => number

  constructor(storage: Pick<Storage, 'run'>, now: () => number) {
    this.#storage = storage
    this.#now = now
  }

  begin(address: string): Promise<boolean> {
    const input = { addressHash: hashOf(address), nowMs: this.#now() }
    return this.#storage.run('beginTry', { ...input, most: TRIES, pauseMs: PAUSE_MS })
  }

  async succeeded(address: string): Promise<void> {
    const input = { addressHash: hashOf(address), nowMs: this.#now() }
    await this.#storage.run('forgiveTries', input)
  }
}
