import { CAPTAINS_DEFAULTS } from '../documents/plan.ts'
import { inForce } from '../fold/in-force.ts'
import type { State, StopMoment, StopState } from '../fold/state.ts'
import { ruleValue } from '../rules/index.ts'
import { policyFor } from '../rules/policy-for.ts'
import { known } from '../rules/shape.ts'
import { counted, holdsNow } from '../time/held.ts'
import { stopNow } from './phase.ts'
import { openCause } from './segment-clock.ts'
import { cameInAt, visitsOf } from './visits.ts'

export interface StopClock {
  readonly stop: StopState
  /** 1 for the first of its sort: among the mandatory stops, or among all where it is not one. */
  readonly ordinal: number
  readonly mandatory: boolean
  /** When the moment was from which the minimum counts; undefined until it is recorded. */
  readonly countedFrom?: number
  /** Since the counted moment, or since the car came in where that is not recorded. */
  readonly elapsedMs: number
  /** The end of the call from which the minimum counts anew. */
  readonly startedAgainAt?: number
  /** The three below only for a mandatory stop whose minimum is known. */
  readonly minimumMs?: number
  /** Of the minimum, the captain's margin not included; 0 once it is over. */
  readonly remainingMs?: number
  /** When the car may go, the captain's margin included; undefined while the minimum holds or did not begin. */
  readonly goAt?: number
  readonly goMarginMs: number
  /** Whether the minimum counts on: false while it holds, or waits to start again. */
  readonly running: boolean
  /** Whether what a track call does to the minimum, or from when it counts, is assumed. */
  readonly assumed: boolean
  readonly from?: StopMoment
  readonly to?: StopMoment
}

/**
 * The visit that is going on; undefined while the car is out. GO comes at the counted moment + the minimum +
 * the time it held + the captain's margin. Where a call makes the minimum start again, the whole of it remains until
 * the call is over, and counts from there.
 */
export function stopClock(state: State, now: number): StopClock | undefined {
  const stop = stopNow(state)
  const visit = stop && visitsOf(state, now).find((one) => one.stop === stop)
  if (!stop || !visit) return undefined
  const { from, to, assumed } = countedMoments(state, now)
  const goMarginMs = (inForce(state, 'plan', now)?.captain ?? CAPTAINS_DEFAULTS).goMarginMs
  const countedFrom = countedMoment(stop, from)
  const running = !holdsNow(state, 'stopMinimum') && !startsAgainAfterThis(state)
  const regulations = inForce(state, 'rules', now)
  const policy = policyFor(regulations, 'stopMinimum', openCause(state) ?? 'trackCall')
  return {
    stop,
    ordinal: visit.ordinal,
    mandatory: visit.mandatory,
    ...(countedFrom === undefined ? {} : { countedFrom }),
    elapsedMs: Math.max(0, now - (countedFrom ?? cameInAt(stop))),
    ...(visit.mandatory ? minimumOf(state, { now, countedFrom, running, goMarginMs }) : {}),
    goMarginMs,
    running,
    assumed: visit.mandatory && (policy.assumed || assumed),
    from,
    to,
  }
}

export interface CountedMoments {
  readonly from: 'pitEntry' | 'stopped'
  readonly to: 'leaving' | 'pitExit'
  readonly assumed: boolean
}

/**
 * Which moments *Car in* and *Car out* record, so that the minimum is counted as the rules count it. While
 * they do not say, from stopped to leaving: the shortest reading, which stays longest.
 */
export function countedMoments(state: State, now: number): CountedMoments {
  const rule = ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'stopMinimum')
  const from = known(rule?.from)
  const to = known(rule?.to)
  const assumed = rule !== undefined && (from === undefined || to === undefined)
  return { from: from ?? 'stopped', to: to ?? 'leaving', assumed }
}

/** Counted from entry, a car of which only the stopping was seen is counted from there: later, never sooner. */
function countedMoment(stop: StopState, from: 'pitEntry' | 'stopped'): number | undefined {
  const { pitEntry, stopped } = stop.moments
  return from === 'pitEntry' ? (pitEntry ?? stopped)?.at : stopped?.at
}

interface Counting {
  readonly now: number
  readonly countedFrom: number | undefined
  readonly running: boolean
  readonly goMarginMs: number
}

function minimumOf(
  state: State,
  { now, countedFrom, running, goMarginMs }: Counting,
): Pick<StopClock, 'minimumMs' | 'remainingMs' | 'goAt' | 'startedAgainAt'> {
  const rule = ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'stopMinimum')
  const minimumMs = known(rule?.minimumMs)
  if (minimumMs === undefined) return {}
  if (countedFrom === undefined) return { minimumMs, remainingMs: minimumMs }
  const { since, again, waits, heldMs } = counted(state, 'stopMinimum', {
    from: countedFrom,
    to: now,
  })
  if (waits) return { minimumMs, remainingMs: minimumMs }
  const doneAt = since + minimumMs + heldMs
  const remainingMs = Math.min(minimumMs, Math.max(0, doneAt - now))
  const isDone = remainingMs === 0
  return {
    minimumMs,
    remainingMs,
    ...(again ? { startedAgainAt: since } : {}),
    ...(running || isDone ? { goAt: doneAt + goMarginMs } : {}),
  }
}

function startsAgainAfterThis(state: State): boolean {
  const last = state.raceControl.interruptions.at(-1)
  return last?.toAt === undefined && last?.policy.stopMinimum === 'startsAgain'
}
