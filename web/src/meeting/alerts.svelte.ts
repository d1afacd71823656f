/** Alerts exist on devices: this one sounds what falls due, once, shows it, and remembers that it did. */
import { obligations } from '@pitlamp/race'
import { thresholdUrgency } from '../parts/alert-urgency.ts'
import type { Urgency } from '../parts/urgency.ts'
import {
  newAlerts,
  stillShown,
  weightiestFirst,
  type Due,
  type Hearing,
  type Moment,
} from './due-alerts.ts'
import { sound } from './sound.svelte.ts'
import { spoken } from './spoken.ts'

type Now = Omit<Moment, 'obligations'>
const RANK: Readonly<Record<Urgency, number>> = { calm: 0, soon: 1, now: 2 }

export class Alerts {
  shown = $state.raw<readonly Due[]>([])
  hearing: Hearing = 'none'
  #heard: readonly string[]
  readonly #keep: (alert: string, at: number) => void
  #checkedTo: number | undefined

  constructor(heard: readonly string[], keep: (alert: string, at: number) => void) {
    this.#heard = heard
    this.#keep = keep
  }

  /** Whether anything would be heard: asked on a state that may be old, before it is folded anew. */
  anythingDue(now: Now): boolean {
    return this.#new({ ...now, obligations: obligations(now.state, now.now) }).length > 0
  }

  /** Sounds and shows what is new, and takes off what has had its time. */
  check(now: Now): void {
    const moment = { ...now, obligations: obligations(now.state, now.now) }
    const fresh = this.#new(moment)
    this.#checkedTo = now.now
    const shown = weightiestFirst(stillShown([...this.shown, ...fresh], moment))
    if (shown.length > 0 || this.shown.length > 0) this.shown = shown
    if (fresh.length === 0) return
    this.#heard = [...this.#heard, ...fresh.map(({ id }) => id)]
    for (const { id } of fresh) this.#keep(id, now.now)
    soundAll(fresh.filter(({ sounded }) => sounded))
  }

  dismiss(id: string): void {
    this.shown = this.shown.filter((alert) => alert.id !== id)
  }

  #new(moment: Moment): readonly Due[] {
    return newAlerts(moment, {
      hearing: this.hearing,
      checkedTo: this.#checkedTo,
      heard: (alert) => this.#heard.includes(alert),
    })
  }
}

/** Speech takes its time: more than two sentences at once nobody follows. Common practice, no source. */
const SPOKEN_AT_ONCE = 2

/** One tone for all that come at once, the most pressing; the weightiest are spoken. */
function soundAll(alerts: readonly Due[]): void {
  const urgencies = alerts.map(({ thresholdMs }) => thresholdUrgency(thresholdMs))
  const [worst] = urgencies.sort((a, b) => RANK[b] - RANK[a])
  if (worst === undefined) return
  sound.sound(worst)
  const weighty = weightiestFirst(alerts).slice(0, SPOKEN_AT_ONCE)
  for (const alert of weighty) sound.say(spoken(alert))
}
