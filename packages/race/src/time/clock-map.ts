/**
 * The two axes of a running segment: its race clock (`clockMs`, 0 at green, standing while the rules say so)
 * and meeting time (`at`). Between knots the map is a straight line of rate 0 or 1.
 */
import type { ClockKnot, SegmentRun } from '../fold/state.ts'

export interface ClockReading {
  readonly clockMs: number
  readonly boundMs: number
  readonly rate: 0 | 1
}

/** What the race clock shows at `at` (meeting time). Before green 0, after the end what it ended on. */
export function clockAt(run: SegmentRun, at: number): ClockReading {
  const over = run.endAt !== undefined && at >= run.endAt
  const counts = over ? (run.endAt ?? at) : at
  const knot = knotAt(run, counts)
  if (!knot) return { clockMs: 0, boundMs: run.knots[0]?.boundMs ?? 0, rate: 0 }
  const clockMs = knot.clockMs + (knot.rate === 1 ? counts - knot.at : 0)
  return { clockMs, boundMs: knot.boundMs, rate: over ? 0 : knot.rate }
}

/**
 * When the race clock shows `clockMs`. What is still to come runs on at rate 1 from `now`, so that the answer
 * slides while the clock stands. In the past a position the clock jumped over is at the jump, one it passed
 * twice is where it passed last, and one beyond the end of a run is at its end.
 */
export function atOf(run: SegmentRun, clockMs: number, now: number): number {
  const last = run.knots.at(-1)
  if (!last) return now
  const from = Math.max(last.at, now)
  const reached = clockAt(run, from).clockMs
  if (clockMs >= reached) return run.endAt ?? from + clockMs - reached
  for (let i = run.knots.length - 1; i >= 0; i -= 1) {
    const knot = run.knots[i]
    if (knot && knot.clockMs <= clockMs) return within(knot, clockMs, run.knots[i + 1]?.at ?? from)
  }
  return run.greenAt
}

function within(knot: ClockKnot, clockMs: number, until: number): number {
  const beyond = clockMs - knot.clockMs
  if (knot.rate === 0) return beyond === 0 ? knot.at : until
  return Math.min(knot.at + beyond, until)
}

function knotAt(run: SegmentRun, at: number): ClockKnot | undefined {
  for (let i = run.knots.length - 1; i >= 0; i -= 1) {
    const knot = run.knots[i]
    if (knot && knot.at <= at) return knot
  }
  return undefined
}
