/** Everything the meeting owes, from the plan, the rules and what was pressed. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { clockDue } from './clock-due.ts'
import { dutiesDue } from './duties-due.ts'
import type { Obligation } from './obligation.ts'
import { isCaptains } from './alerts.ts'
import { callsDue } from './calls-due.ts'
import { carDue } from './car-due.ts'
import { lightsDue } from './lights-due.ts'
import { protestsDue } from './protests-due.ts'
import { stopsDue } from './stops-due.ts'

/** Everything that falls due, soonest first; what is overdue stays until it is done or past. */
export function obligations(state: State, now: number): readonly Obligation[] {
  const due = [
    ...clockDue(state, now),
    ...dutiesDue(state, now),
    ...stopsDue(state, now),
    ...callsDue(state, now),
    ...carDue(state, now),
    ...protestsDue(state, now),
    ...lightsDue(state, now),
  ]
  return withCaptainsMoments(state, now, due).sort(
    (a, b) => a.dueAt - b.dueAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  )
}

/** Each moment once; a captain's empty list is none at all. */
function withCaptainsMoments(state: State, now: number, due: readonly Obligation[]): Obligation[] {
  const said = inForce(state, 'plan', now)?.captain.alertsMs
  if (!said) return [...due]
  const alertsMs = [...new Set(said)].sort((a, b) => b - a)
  return due.map((one) => (isCaptains(one.kind) ? { ...one, alertsMs } : one))
}
