/** The call that fills a phone: the last to this person, while nobody has answered it. */
import type { State } from '@pitlamp/race'

export interface OwnCall {
  readonly id: string
  readonly at: number
  readonly words: string
}

export function callFor(state: State, person: string): OwnCall | undefined {
  const last = state.people.calls.filter(({ body }) => body.person === person).at(-1)
  if (!last || last.answer !== undefined) return undefined
  return { id: last.entry, at: last.at, words: last.body.words }
}
