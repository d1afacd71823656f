/** Who is not there by what they last said, from when until when. */
import type { Stretch } from '../checks/stretches.ts'
import type { State } from '../fold/state.ts'

/**
 * By person, in meeting time. Late, away and unwell last to the time that was said with them, and longer while nobody
 * says that the person is here; without a time whoever is late may come at any moment, and the others do not.
 */
export function awayNow(state: State, now: number): ReadonlyMap<string, Stretch> {
  const away = new Map<string, Stretch>()
  for (const [person, said] of Object.entries(state.people.availability)) {
    if (said.state === 'here' || said.state === 'wantsRelief') continue
    const openEnd = said.state === 'late' ? now : Infinity
    const toAt = Math.max(said.until ?? openEnd, now)
    away.set(person, { fromAt: said.at, toAt })
  }
  return away
}
