import type { FaultState, State } from '../fold/state.ts'
import { heldMs } from '../time/held.ts'

export interface FaultClocks {
  readonly fault: FaultState
  /** Since it was noted, while a segment runs, by the policy for repair limits; until it was mended or left. */
  readonly runningWithMs: number
  /** All goes at its repair together. */
  readonly repairMs: number
  readonly repairing: boolean
}

/** Open faults first, oldest first; then those that ended, latest first. */
export function faultClocks(state: State, now: number): readonly FaultClocks[] {
  const { faults } = state.car
  const open = faults.filter((fault) => !fault.ended).sort((a, b) => a.notedAt - b.notedAt)
  const ended = faults
    .filter((fault) => fault.ended)
    .sort((a, b) => (b.ended?.at ?? 0) - (a.ended?.at ?? 0))
  return [...open, ...ended].map((fault) => ({
    fault,
    runningWithMs: runningWithMs(state, fault, now),
    repairMs: fault.repairs.reduce((sum, go) => sum + Math.max(0, (go.toAt ?? now) - go.fromAt), 0),
    repairing: fault.repairs.some((go) => go.toAt === undefined),
  }))
}

function runningWithMs(state: State, fault: FaultState, now: number): number {
  let sum = 0
  for (const { greenAt, endAt } of state.raceControl.runs) {
    const from = Math.max(greenAt, fault.notedAt)
    const to = Math.min(endAt ?? now, fault.ended?.at ?? now)
    if (to > from) sum += to - from - heldMs(state, 'repairLimit', { from, to })
  }
  return sum
}
