/** The marshal's page, looked at anew four times a minute: it changes only when a fact does. */
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { raceHead } from '../../parts/race-head.ts'
import { postPage } from './post-page.ts'

const STEP_MS = 15_000

export class MarshalModel {
  readonly #of: () => MeetingPort

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly #now = $derived.by(() => Math.floor(this.#of().now / STEP_MS) * STEP_MS)
  readonly crew = $derived.by(() => crewNames(this.#of().state, this.#now))
  readonly person = $derived.by(() => this.crew.people.find(({ id }) => id === this.#of().person))
  readonly page = $derived.by(() => {
    if (!this.person) return undefined
    const { timeZone, nameOf } = this.crew
    return postPage({
      state: this.#of().state,
      now: this.#now,
      person: this.person.id,
      timeZone,
      nameOf,
    })
  })

  readonly power = $derived.by(() => raceHead(this.#of().state, this.#now).power)

  readonly hold = (person: string | undefined): void => {
    this.#of().holdBy(person)
  }
}
