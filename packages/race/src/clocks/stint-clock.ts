import type { PlanSpan } from '../documents/plan.ts'
import type { State } from '../fold/state.ts'
import { atOf, clockAt } from '../time/clock-map.ts'
import { heldMs } from '../time/held.ts'
import { satOut } from '../time/lanes.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { plannedDuties, plannedDutyOf } from '../time/plan-spans.ts'
import { currentRun } from '../time/programme.ts'

export interface StintClock {
  readonly person: string
  /** When this stint began: the handover, or the green that found this driver at the controller. */
  readonly since: number
  readonly drivenMs: number
  /** By the plan, in meeting time; where it says nothing, the segment's end. */
  readonly plannedEndAt?: number
  /** Below 0 once the stint is over its plan. */
  readonly toGoMs?: number
  readonly lengthMs?: number
  /** Whether the countdown runs: false while the race clock holds. */
  readonly running: boolean
  /** The plan's span it serves; absent where the driver stands in for another. */
  readonly span?: PlanSpan
}

/**
 * The stint of whoever drives now; undefined while no segment runs that we have a lane in, or nobody is known to
 * drive. A stint lies within one segment; its planned end is a position on the race clock, so it slides while that
 * stands. Driven time counts by the policy for driving.
 */
export function stintClock(state: State, now: number): StintClock | undefined {
  const run = currentRun(state)
  const duty = driverNow(state)
  if (!run || !duty || satOut(state, now)(run)) return undefined
  const since = Math.max(duty.fromAt, run.greenAt)
  const fromMs = clockAt(run, since).clockMs
  const planned = plannedDuties(planInForce(state, now), run.segment)
  const { own, endsMs } = plannedDutyOf(planned, duty, fromMs)
  const toMs = endsMs ?? (run.length.by === 'time' ? run.length.lengthMs : undefined)
  const { clockMs, rate } = clockAt(run, now)
  return {
    person: duty.person,
    since,
    drivenMs: Math.max(0, now - since) - heldMs(state, 'driving', { from: since, to: now }),
    ...(toMs === undefined
      ? {}
      : {
          plannedEndAt: atOf(run, toMs, now),
          toGoMs: toMs - clockMs,
          lengthMs: Math.max(0, toMs - fromMs),
        }),
    running: rate === 1,
    ...(own ? { span: own } : {}),
  }
}

/** Who has the controller now. */
export function driverNow(state: State) {
  return state.people.duties.find((span) => span.toAt === undefined && span.duty === 'controller')
}
