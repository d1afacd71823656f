import { inForce } from '../fold/in-force.ts'
import type { SegmentRun, State } from '../fold/state.ts'
import { policyFor } from '../rules/policy-for.ts'
import { clockAt } from '../time/clock-map.ts'
import { currentRun, placeOf, type SegmentPlace } from '../time/programme.ts'

export interface SegmentClock {
  readonly run: SegmentRun
  readonly segment: SegmentPlace
  readonly elapsedMs: number
  /** Never below 0; absent where the segment is counted in laps. */
  readonly toGoMs?: number
  readonly lengthMs?: number
  /** Whether the race clock runs: false while it holds. */
  readonly running: boolean
  readonly boundMs: number
  /** When the hall's clock was last read. */
  readonly readAt?: number
  /** Whether what stops it is assumed, not known. */
  readonly assumed: boolean
}

/** The race clock of the running segment; undefined while none runs. */
export function segmentClock(state: State, now: number): SegmentClock | undefined {
  const run = currentRun(state)
  if (!run) return undefined
  const { clockMs, boundMs, rate } = clockAt(run, now)
  const regulations = inForce(state, 'rules', now)
  const cause = openCause(state) ?? 'trackCall'
  const lengthMs = run.length.by === 'time' ? run.length.lengthMs : undefined
  return {
    run,
    segment: placeOf(state, run, now),
    elapsedMs: clockMs,
    ...(lengthMs === undefined ? {} : { lengthMs, toGoMs: Math.max(0, lengthMs - clockMs) }),
    running: rate === 1,
    boundMs,
    ...(run.clockReadAt === undefined ? {} : { readAt: run.clockReadAt }),
    assumed: policyFor(regulations, 'segment', cause).assumed,
  }
}

/** Why the power is off; undefined while it is on. */
export function openCause(state: State): 'trackCall' | 'redFlag' | undefined {
  const last = state.raceControl.interruptions.at(-1)
  return last && last.toAt === undefined ? last.cause : undefined
}
