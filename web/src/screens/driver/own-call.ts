/** The call that fills a phone: the last that calls this person, while nobody has answered it. */
import { callsNow, type State } from '@pitlamp/race'

export interface OwnCall {
  readonly id: string
  readonly at: number
  readonly words: string
  /** Whom it was for before it was passed on to this person. */
  readonly passedOnFrom?: string
}

export function callFor(state: State, person: string, now: number): OwnCall | undefined {
  const last = callsNow(state, now)
    .filter(({ call, to, ...one }) => one.state !== 'ahead' && isTo(person, call.body.person, to))
    .at(-1)
  if (!last) return undefined
  const { call, dueAt } = last
  const own = { id: call.entry, at: dueAt, words: call.body.words }
  return call.body.person === person ? own : { ...own, passedOnFrom: call.body.person }
}

/** Whoever was called first goes on being called. */
function isTo(person: string, called: string, to: string): boolean {
  return called === person || to === person
}
