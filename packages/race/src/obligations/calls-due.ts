import { personName } from '../fold/names.ts'
import type { State } from '../fold/state.ts'
import type { Obligation } from './obligation.ts'

/** How long a person has to answer: common practice, no source. */
const ANSWER_WITHIN_MS = 30_000

/** A call nobody answered yet; a later call to the same person takes its place. */
export function callsDue(state: State): readonly Obligation[] {
  const last = new Map(state.people.calls.map((call) => [call.body.person, call]))
  return [...last.values()]
    .filter((call) => !call.answer)
    .map(({ entry, at, body }) => ({
      id: `callUnanswered:${entry}`,
      kind: 'callUnanswered',
      dueAt: at + ANSWER_WITHIN_MS,
      held: false,
      lengthMs: ANSWER_WITHIN_MS,
      concerns: [body.person],
      label: `${personName(state, body.person)} has not answered`,
    }))
}
