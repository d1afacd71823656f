/**
 * A screen's reckoning of the server's time, from probes. Pure: the shell brings the instants, the clock
 * keeps what it needs. Local time is `performance.now()`: it never steps, but stops while a device sleeps.
 */
import { A_DAY_MS } from './bounds.ts'
import { reckonedByWall, type WallReckoning } from './wall.ts'

/** One moment on the two clocks of a device: `performance.now()` and `Date.now()`. */
export interface Instants {
  readonly localMs: number
  readonly dateMs: number
}

/** One probe: t0 and t3 are local, t1 and t2 the server's; `dateNow` is `Date.now()` at t3. */
export interface ProbeSample {
  readonly t0: number
  readonly t1: number
  readonly t2: number
  readonly t3: number
  readonly epoch: number
  readonly dateNow: number
}

/** What one probe says: server minus local time at a local moment, right to within half the round trip. */
export interface Sample {
  readonly atMs: number
  readonly offsetMs: number
  readonly rttMs: number
}

/** Server minus local time as it runs on from a local moment. */
export interface Line {
  readonly atMs: number
  readonly offsetMs: number
  /** Milliseconds a millisecond: how much faster than the local clock the server's is. */
  readonly slope: number
}

export interface ScreenClock {
  readonly epoch: number
  /** The best probe of each of the last ten minutes, oldest first. */
  readonly samples: readonly Sample[]
  readonly last: Sample | undefined
  readonly line: Line
  /** How far off the line may be at its own moment while there is no sample to tell. */
  readonly heldBoundMs: number
  /** What is shown minus what the line says, at a local moment: it melts away. */
  readonly slew: { readonly fromMs: number; readonly restMs: number }
  /** When both clocks of the device were last compared. */
  readonly compared: Instants
  /** Local time since which probes count. */
  readonly sinceMs: number
  /** Probes of the burst still to come. */
  readonly burst: number
  /** Started over, and not yet sure again. */
  readonly settling: boolean
  /** Put this into storage after every sample: it outlives a reload. */
  readonly wall: WallReckoning | undefined
}

export const BURST_PROBES = 8

/** Until the first probe it goes by the device's wall clock, and by what a reload left of an earlier reckoning. */
export function newScreenClock(now: Instants, kept?: WallReckoning): ScreenClock {
  const reckoned = kept && reckonedByWall(kept, now.dateMs)
  const serverMs = reckoned?.serverMs ?? now.dateMs
  return {
    epoch: reckoned?.epoch ?? 0,
    samples: [],
    last: undefined,
    line: { atMs: now.localMs, offsetMs: serverMs - now.localMs, slope: 0 },
    heldBoundMs: reckoned?.boundMs ?? A_DAY_MS,
    slew: { fromMs: now.localMs, restMs: 0 },
    compared: now,
    sinceMs: now.localMs,
    burst: BURST_PROBES,
    settling: true,
    wall: reckoned && kept,
  }
}

/** How many probes to send one after another, without waiting for the next beat. */
export function probesWanted(clock: ScreenClock): number {
  return clock.burst
}
