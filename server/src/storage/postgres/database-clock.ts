/**
 * The database's clock as this process reckons it: the reckoning of a screen, with the database in the place of
 * the server (see `packages/sync`, the screen's clock).
 */
import { addSample, newScreenClock, reckon, type ScreenClock } from '@pitlamp/sync'
import type { Clocks } from '../../time/server-time.ts'

export class DatabaseClock {
  #clock: ScreenClock = newScreenClock(instants())
  #steppedMs = 0

  /** `monotonic` runs as the database's clock runs, but does not follow where somebody moves that. */
  readonly clocks: Clocks = {
    wall: () => this.#now(),
    monotonic: () => this.#now() - this.#steppedMs,
    shared: true,
  }

  boundMs(): number {
    return reckon(this.#clock, performance.now()).boundMs
  }

  /** Asked at `t0`, answered at `t3` by `performance.now()`; its clock said `saidMs` in between. */
  heard({ t0, saidMs, t3 }: { t0: number; saidMs: number; t3: number }): void {
    const before = reckon(this.#clock, t3).serverMs
    const probe = { t0, t1: saidMs, t2: saidMs, t3, epoch: 0, dateNow: Date.now() }
    this.#clock = addSample(this.#clock, probe)
    // Small corrections melt away: at this moment they change nothing.
    this.#steppedMs += reckon(this.#clock, t3).serverMs - before
  }

  #now(): number {
    return reckon(this.#clock, performance.now()).serverMs
  }
}

function instants() {
  return { localMs: performance.now(), dateMs: Date.now() }
}
