/** The server's time at a local moment, how far off that may be, and how it is to be shown. */
import { A_DAY_MS, DRIFT, standingOf, type Standing } from './bounds.ts'
import { offsetAt } from './line.ts'
import type { Sample, ScreenClock } from './screen-clock.ts'

/** A correction melts at this rate: 200 ms within two seconds, and time never stands still meanwhile. */
const SLEW_RATE = 0.1

export interface Reckoning {
  /** Not rounded. */
  readonly serverMs: number
  /** How far off that may be, at most a day. */
  readonly boundMs: number
  readonly standing: Standing
  /** Which reading of the server's clock this is. */
  readonly epoch: number
}

export function reckon(clock: ScreenClock, localMs: number): Reckoning {
  const offsetMs = shownOffsetAt(clock, localMs)
  const boundMs = Math.min(A_DAY_MS, boundOf(clock, localMs, offsetMs))
  return {
    serverMs: localMs + offsetMs,
    boundMs,
    standing: clock.settling ? 'notSure' : standingOf(boundMs),
    epoch: clock.epoch,
  }
}

/** Server minus local time as shown: the line, and what is left of the last correction. */
export function shownOffsetAt(clock: ScreenClock, localMs: number): number {
  const { fromMs, restMs } = clock.slew
  const leftMs = Math.max(0, Math.abs(restMs) - SLEW_RATE * Math.max(0, localMs - fromMs))
  return offsetAt(clock.line, localMs) + (restMs < 0 ? -leftMs : leftMs)
}

/**
 * Every probe allows the true offset within half its round trip and 100 ppm of its age (Cristian 1989), so
 * what is shown is off by at most its distance from any one of them and what that one allows: the least of
 * these holds. For a single probe this is round trip / 2 + 100 ppm × age.
 */
function boundOf(clock: ScreenClock, localMs: number, offsetMs: number): number {
  const { samples, last, line, heldBoundMs } = clock
  if (!last) return heldBoundMs + DRIFT * Math.abs(localMs - line.atMs)
  return [...samples, last].reduce(
    (least, sample) => Math.min(least, reachOf(sample, clock, { localMs, offsetMs })),
    A_DAY_MS,
  )
}

function reachOf(
  { atMs, offsetMs, rttMs }: Sample,
  { line }: ScreenClock,
  shown: { readonly localMs: number; readonly offsetMs: number },
): number {
  const ageMs = Math.abs(shown.localMs - atMs)
  const expectedMs = offsetMs + line.slope * (shown.localMs - atMs)
  return Math.abs(shown.offsetMs - expectedMs) + rttMs / 2 + DRIFT * ageMs
}
