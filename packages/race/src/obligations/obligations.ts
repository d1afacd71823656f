/** Everything the meeting owes, from the plan, the rules and what was pressed. */
import type { State } from '../fold/state.ts'
import { clockDue } from './clock-due.ts'
import { dutiesDue } from './duties-due.ts'
import type { Obligation } from './obligation.ts'
import { callsDue } from './calls-due.ts'
import { stopsDue } from './stops-due.ts'

/** Everything that falls due, soonest first; what is overdue stays until it is done or past. */
export function obligations(state: State, now: number): readonly Obligation[] {
  return [
    ...clockDue(state, now),
    ...dutiesDue(state, now),
    ...stopsDue(state, now),
    ...callsDue(state),
  ].sort((a, b) => a.dueAt - b.dueAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
}
