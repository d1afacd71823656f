/** The driver's phone, from (state, now) and whoever holds it. */
import { nextDutyOf } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { raceHead } from '../../parts/race-head.ts'
import { clockTime } from '../../parts/time.ts'
import { driverFace } from './driver-face.ts'
import { callFor } from './own-call.ts'

const SECOND_MS = 1_000

export class DriverModel {
  readonly #of: () => MeetingPort

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly #second = $derived.by(() => Math.floor(this.#of().now / SECOND_MS) * SECOND_MS)
  readonly crew = $derived.by(() => crewNames(this.#of().state, this.#second))
  readonly person = $derived.by(() => this.crew.people.find(({ id }) => id === this.#of().person))
  readonly head = $derived.by(() => raceHead(this.#of().state, this.#second))
  readonly face = $derived.by(() => {
    const { state, now } = this.#of()
    return (
      this.person &&
      driverFace({ state, now, person: this.person.id, timeZone: this.crew.timeZone })
    )
  })
  /** The figure says when this phone's own person drives: an alert about it would only say it again. */
  readonly told = $derived.by(() => {
    const next = this.person && nextDutyOf(this.#of().state, this.person.id, this.#second)
    return next?.span.duty === 'controller' ? [`nextDuty:${next.span.id}`] : []
  })
  readonly call = $derived.by(() => {
    const call = this.person && callFor(this.#of().state, this.person.id, this.#second)
    if (!call) return undefined
    const from = `From the wall, ${clockTime(call.at, this.crew.timeZone)}`
    const { passedOnFrom: other } = call
    return {
      ...call,
      from: other === undefined ? from : `${from}: ${this.crew.nameOf(other)} does not answer`,
    }
  })
  /** A driver's hands are on the controller: the wall marks the call heard. */
  readonly mayAnswer = $derived.by(() => this.face?.driving === false && this.#of().may('answer.1'))
  /** A call takes the lamp from every countdown. */
  readonly lit = $derived.by(
    () => this.call === undefined && this.face !== undefined && this.face.urgency !== 'calm',
  )

  readonly hold = (person: string | undefined): void => {
    this.#of().holdBy(person)
  }

  heard(): void {
    if (this.call) this.#of().press('answer.1', { call: this.call.id, answer: 'heard' })
  }
}
