/** Whether the lane change has the screen. It comes by itself; one press puts it away until the next. */
import { phaseOf } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { Fetched } from '../../parts/fetched.svelte.ts'
import { fetchLaneChange } from './after-first.ts'

/** One for all screens: what was put away on one stays so on the next. */
const fetched = new Fetched(fetchLaneChange)
let awaySince = $state<number>()

export class LaneChangeComes {
  readonly #of: () => MeetingPort

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  readonly #between = $derived.by(() => phaseOf(this.#of().state).phase === 'between')
  readonly #change = $derived.by(() => {
    const { state, now } = this.#of()
    return this.#between ? fetched.here?.laneChange(state, now) : undefined
  })
  /** There is a lane change, on show or put away. */
  readonly isOn = $derived.by(() => this.#change !== undefined)
  /** Undefined unless it has the screen now. */
  readonly Screen = $derived.by(() =>
    this.#change && this.#change.since !== awaySince ? fetched.here?.LaneChange : undefined,
  )

  /** Called from an effect: asks the network for what it needs, before it is needed. */
  readonly fetch = (): void => {
    if (this.#between || !fetched.missing) void fetched.load()
  }

  readonly putAway = (): void => {
    awaySince = this.#change?.since
  }

  readonly bringBack = (): void => {
    awaySince = undefined
  }
}
