/** What the screen between two segments shows and records. Verbs and sheets are the wall's own. */
import { between, DUTIES, planInForce } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { cautionsFor } from '../../parts/cautions.ts'
import { handsWords } from '../../parts/hands.ts'
import { DUTY_WORD } from '../../parts/moves.ts'
import { carsShown } from '../wall/cars.ts'
import { WallModel } from '../wall/wall-model.svelte.ts'
import { allowanceShown, BETWEEN_WORD, measuredShown, waits } from './between-face.ts'

const SECOND_MS = 1_000
const OF_PEOPLE = /^(?:nextDuty|relief):/

export class BetweenModel {
  readonly #of: () => MeetingPort
  readonly wall: WallModel

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    this.wall = new WallModel(meeting)
  }

  readonly #second = $derived.by(() => Math.floor(this.#of().now / SECOND_MS) * SECOND_MS)
  readonly #between = $derived.by(() => between(this.#of().state, this.#second))
  readonly #seen = $derived.by(() => {
    const { state, now } = this.#of()
    return { state, now, timeZone: this.wall.crew.timeZone }
  })

  readonly here = $derived.by(() => this.#between !== undefined)
  readonly title = $derived.by(() => this.#between && BETWEEN_WORD[this.#between.kind])
  readonly hands = $derived.by(() => this.#between && handsWords(this.#between.hands))
  readonly clause = $derived.by(() => this.#between?.hands.clause)
  /** What is due first has the lamp once it presses. */
  readonly waits = $derived.by(() => {
    const all = this.#between ? waits(this.#between, this.#seen) : []
    const due = all.find(({ urgency }) => urgency !== 'calm')
    return all.map((one) => ({ ...one, lit: one === due }))
  })
  readonly work = $derived.by(() =>
    (this.#between?.work ?? []).map((one) => ({
      ...one,
      next: one.work === this.#between?.nextWork,
      cautions: one.done ? [] : cautionsFor(one.work),
    })),
  )
  readonly measured = $derived.by(() =>
    (this.#between?.measurements ?? []).map((one) => measuredShown(one, this.wall.crew.timeZone)),
  )
  readonly allowances = $derived.by(() => (this.#between?.allowances ?? []).map(allowanceShown))
  readonly cars = $derived.by(() => carsShown(this.#of().state, this.#second))
  /** Who has which duty when the next segment goes green, as the plan has it. */
  readonly next = $derived.by(() => {
    const segment = this.wall.phase.next?.item.id
    const spans = planInForce(this.#of().state, this.#second)?.spans ?? []
    return spans
      .filter((span) => span.segment === segment && span.fromMs === 0)
      .sort((a, b) => DUTIES.indexOf(a.duty) - DUTIES.indexOf(b.duty))
      .map(({ id, person, duty, post }) => ({
        id,
        duty: post === undefined ? DUTY_WORD[duty] : `Post ${post}`,
        name: this.wall.crew.nameOf(person),
      }))
  })
  readonly moves = $derived.by(() => this.wall.handover?.steps ?? [])
  /** Who moves at the next green stands on the screen. */
  readonly told = $derived.by(() => this.wall.told.filter((id) => OF_PEOPLE.test(id)))
  readonly mayTick = $derived.by(() => this.#of().may('workTicked.1'))

  readonly tick = (work: string, done: boolean): void => {
    const word = done ? work : `${work} again`
    this.wall.recorder.record({ kind: 'workTicked.1', body: { work, done }, word, place: TICKED })
  }
}

/** Undo of a tick stands over the middle of the bar. */
const TICKED = 2
