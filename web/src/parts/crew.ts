/** The crew and the venue's time zone as the documents in force name them. */
import { inForce, type CrewMember, type State } from '@pitlamp/race'

export interface CrewNames {
  readonly people: readonly CrewMember[]
  readonly timeZone: string
  readonly nameOf: (person: string) => string
}

/** Somebody the crew document does not know is called so; where no rules name a zone it is UTC. */
export function crewNames(state: State, now: number): CrewNames {
  const people = inForce(state, 'crew', now)?.people ?? []
  const names = new Map(people.map(({ id, name }) => [id, name]))
  return {
    people,
    timeZone: inForce(state, 'rules', now)?.timeZone ?? 'UTC',
    nameOf: (person) => names.get(person) ?? 'somebody not in the crew',
  }
}
