import type { FaultState, State } from '../fold/state.ts'
import { heldMs } from '../time/held.ts'
import { satOut } from '../time/lanes.ts'
import { handsOffMs } from './during.ts'
import { handsOnCar } from './hands-on-car.ts'

export interface FaultClocks {
  readonly fault: FaultState
  /** Since it was noted, while a segment runs, by the policy for repair limits; until it was mended or left. */
  readonly runningWithMs: number
  /** All goes at its repair together, without the time in which hands had to be off the car. */
  readonly repairMs: number
  /** A go is open, whether or not it counts now. */
  readonly repairing: boolean
  /** Begun and not ended, but nobody may work on it now, or nobody does. */
  readonly paused?: 'byRule' | 'byHand'
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
    repairMs: fault.repairs.reduce((sum, go) => sum + countedMs(state, go, now), 0),
    repairing: fault.repairs.some((go) => go.toAt === undefined),
    ...paused(state, fault, now),
  }))
}

function countedMs(state: State, go: FaultState['repairs'][number], now: number): number {
  const stretch = { fromAt: go.fromAt, toAt: go.toAt ?? now }
  return Math.max(0, stretch.toAt - stretch.fromAt) - handsOffMs(state, stretch)
}

function paused(state: State, fault: FaultState, now: number): Pick<FaultClocks, 'paused'> {
  const last = fault.repairs.at(-1)
  if (!last || fault.ended) return {}
  if (last.toAt !== undefined) return { paused: 'byHand' }
  return handsOnCar(state, now).allowed === false ? { paused: 'byRule' } : {}
}

/** Since it was noted, while a segment runs that is not sat out, by the policy for repair limits. */
export function runningWithMs(state: State, fault: FaultState, now: number): number {
  let sum = 0
  const isSatOut = satOut(state, now)
  for (const run of state.raceControl.runs) {
    if (isSatOut(run)) continue
    const { greenAt, endAt } = run
    const from = Math.max(greenAt, fault.notedAt)
    const to = Math.min(endAt ?? now, fault.ended?.at ?? now)
    if (to > from) sum += to - from - heldMs(state, 'repairLimit', { from, to })
  }
  return sum
}
