import type { InterruptionSpan, State } from '../fold/state.ts'
import type { Clock } from '../rules/clocks.ts'

/**
 * For how long between two instants of meeting time a clock held, by the policies of the interruptions as
 * they were; 0 where `to` is not after `from`.
 */
export function heldMs(
  state: State,
  clock: Clock,
  { from, to }: { readonly from: number; readonly to: number },
): number {
  let held = 0
  for (const { policy, fromAt, toAt } of state.raceControl.interruptions) {
    if (policy[clock] !== 'holds') continue
    held += Math.max(0, Math.min(toAt ?? to, to) - Math.max(fromAt, from))
  }
  return held
}

/** Whether a clock holds at the end of the log. */
export function holdsNow(state: State, clock: Clock): boolean {
  const last = state.raceControl.interruptions.at(-1)
  return last !== undefined && last.toAt === undefined && last.policy[clock] === 'holds'
}

/** A stretch from one moment to another as a clock counts it. */
export interface Counted {
  /** When it last started again; the beginning where it never did. */
  readonly since: number
  /** It started again within the stretch, or is about to. */
  readonly again: boolean
  /** It waits for the end of an interruption after which it starts again. */
  readonly waits: boolean
  /** Since then, without what it held. */
  readonly countedMs: number
  readonly heldMs: number
}

/** Interruptions that reach into the stretch hold a clock, or make it start again from their end. */
export function counted(
  state: State,
  clock: Clock,
  { from, to }: { readonly from: number; readonly to: number },
): Counted {
  const again = state.raceControl.interruptions.filter(
    (one) => one.policy[clock] === 'startsAgain' && reaches(one, from, to),
  )
  const waits = again.some(({ toAt }) => toAt === undefined || toAt > to)
  const since = again.reduce((last, { toAt }) => Math.max(last, toAt ?? to), from)
  if (waits) return { since: to, again: true, waits, countedMs: 0, heldMs: 0 }
  const held = heldMs(state, clock, { from: since, to })
  const countedMs = Math.max(0, to - since) - held
  return { since, again: again.length > 0, waits, countedMs, heldMs: held }
}

function reaches({ fromAt, toAt }: InterruptionSpan, from: number, to: number): boolean {
  return fromAt < to && (toAt === undefined || toAt > from)
}
