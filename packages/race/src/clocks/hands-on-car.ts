import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { known } from '../rules/shape.ts'
import { breakOrParcFerme, workRule, type During } from './during.ts'
import { phaseOf } from './phase.ts'

export interface HandsOnCar {
  /** What the rules say of this phase; they may not say it, or not yet. */
  readonly allowed: boolean | 'notKnown'
  /** What work in this phase costs where it is paid for. */
  readonly costLaps?: number
  readonly clause?: string
  /** No rule speaks of this phase: taken as common practice, no source. */
  readonly assumed?: boolean
}

/** Whether hands may touch the car, in the phase the log ends in, by the rules in force at `at`. */
export function handsOnCar(state: State, at: number): HandsOnCar {
  const during = duringOf(state, at)
  if (!during) return { allowed: true, assumed: true }
  const rule = workRule(inForce(state, 'rules', at), during)
  if (!rule) return { allowed: 'notKnown' }
  const { allowed, costLaps } = rule.value
  return {
    allowed: known(allowed) ?? 'notKnown',
    ...(costLaps === undefined ? {} : { costLaps }),
    ...(rule.clause === undefined ? {} : { clause: rule.clause }),
  }
}

/** Undefined before the start and once the car is released: it is the team's own. */
function duringOf(state: State, at: number): During | undefined {
  const { phase, cause, between } = phaseOf(state, at)
  if (phase === 'green') return 'green'
  if (phase === 'powerOff') return cause
  if (phase === 'between') {
    return between === 'break' ? breakOrParcFerme(inForce(state, 'rules', at)) : between
  }
  return phase === 'finished' && state.raceControl.releasedAt === undefined
    ? 'parcFerme'
    : undefined
}
