import type { State } from '../fold/state.ts'
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
