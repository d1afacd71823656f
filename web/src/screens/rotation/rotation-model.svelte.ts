/** The plan as it is being drawn, what the rules make of it, and what can be done to it. */
import {
  contradictions,
  continuedTimeline,
  inForce,
  judge,
  planInForce,
  planTimeline,
  withDrafts,
  type Crew,
  type Duty,
  type Plan,
  type Regulations,
} from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { beforeGreen } from '../../planning/planned-timeline.ts'
import { planningOf, type PlanningModel } from '../../planning/planning-model.svelte.ts'
import { addSpan, addStops } from './plan-edits.ts'
import {
  addSpanAt,
  addStopAt,
  removeSpan,
  removeStop,
  swapSpans,
  turnPersonKept,
} from './plan-moves.ts'
import { endOf, type Position } from './strip.ts'

export type Chosen =
  | { readonly what: 'span' | 'stop'; readonly id: string }
  | { readonly what: 'place'; readonly person: string; readonly at: Position }

/** While the race runs the plan ahead slides with it: often enough to be true, seldom enough to hold still. */
const RENEW_MS = 10_000

const isSame = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other)

export class RotationModel {
  readonly planning: PlanningModel
  readonly #meeting: () => MeetingPort
  chosen = $state.raw<Chosen>()
  /** Spans and stops of the finding that was pressed. */
  pointedAt = $state.raw<readonly string[]>([])
  /** The span that waits for another to change places with. */
  swapping = $state<string>()
  /** Another version, drawn as an outline under this one. */
  compared = $state.raw<{ readonly version: number; readonly plan: Plan }>()
  /** What a drag would make of the plan. */
  #meant = $state.raw<Plan>()
  /** What was worked out, until it is taken or left: it lies on the strip, the plan as it stands under it. */
  #offered = $state.raw<Plan>()
  #offeredAt = $state(0)
  #undone = $state.raw<readonly string[]>([])

  constructor(meeting: () => MeetingPort) {
    this.#meeting = meeting
    this.planning = planningOf(meeting())
  }

  readonly rules = $derived.by(() => JSON.parse(this.planning.rules.text) as Regulations)
  readonly crew = $derived.by(() => JSON.parse(this.planning.crew.text) as Crew)
  readonly #drawn = $derived.by(() => JSON.parse(this.planning.plan.text) as Plan)
  readonly plan = $derived.by(() => this.#offered ?? this.#meant ?? this.#drawn)
  readonly isOffered = $derived.by(() => this.#offered !== undefined)
  readonly started = $derived.by(() => this.planning.started)
  /** Never before what was worked out: it goes on from where the race was when it was asked for. */
  readonly now = $derived.by(() =>
    this.started
      ? Math.max(this.#offeredAt, Math.floor(this.#meeting().now / RENEW_MS) * RENEW_MS)
      : 0,
  )
  /** What was raced is judged by the rules of its time, unless this draft says otherwise of them all. */
  readonly #state = $derived.by(() => {
    const state = this.started ? this.#meeting().state : beforeGreen(this.#meeting().state)
    const isChanged = this.planning.adoptable.some((draft) => draft === this.planning.rules)
    const rules = this.started && !isChanged ? undefined : this.rules
    return withDrafts(state, { rules, crew: this.crew, plan: this.plan })
  })
  readonly timeline = $derived.by(() => planTimeline(this.#state, this.now))
  /** The plan, or once the race has begun what was raced followed by what is still planned. */
  readonly #judged = $derived.by(() =>
    this.started ? continuedTimeline(this.#state, this.now) : this.timeline,
  )
  /** The race so far, filled in under the plan. */
  readonly raced = $derived.by(() => this.#judged.spans.filter(({ done }) => done))
  readonly comparedSpans = $derived.by(() => {
    const plan = this.#offered ? this.#drawn : this.compared?.plan
    return plan ? planTimeline(withDrafts(this.#state, { plan }), this.now).spans : []
  })
  readonly findings = $derived.by(() => judge(this.#state, this.#judged, this.now))
  readonly broken = $derived.by(() => this.findings.filter(({ verdict }) => verdict === 'broken'))
  readonly contradictions = $derived.by(() => contradictions(this.rules, this.crew))
  readonly canUndo = $derived.by(() => this.#undone.length > 0)
  /** The plan as the wall has moved it since it was adopted, where this draft does not have that yet. */
  readonly moved = $derived.by(() => {
    const { state } = this.#meeting()
    if (state.people.stayOuts.length === 0) return undefined
    const plan = planInForce(state, this.now)
    const adopted = inForce(state, 'plan', this.now)
    return plan !== adopted && !isSame(plan, this.#drawn) ? plan : undefined
  })
  /** Whose whole plan is kept. */
  readonly keptPeople = $derived.by(() => this.plan.keptPeople ?? [])
  readonly hasLanes = $derived.by(
    () =>
      this.timeline.segments.some(({ lane }) => lane !== undefined) ||
      this.rules.rules.some(({ kind }) => kind === 'tracks' || kind === 'postByLane'),
  )
  /** Whether the organiser names a time for the start: otherwise the strip counts from green. */
  readonly hasClock = $derived.by(
    () => this.started || this.rules.programme.some(({ plannedAt }) => plannedAt !== undefined),
  )

  /** Shown, not kept: while a finger drags. */
  mean(plan: Plan | undefined): void {
    this.#meant = this.#offered ? undefined : plan
  }

  /** Lays what was worked out onto the strip, or takes it away again. */
  offer(plan: Plan | undefined): void {
    this.#meant = undefined
    this.chosen = undefined
    this.#offered = plan
    if (plan && this.started) this.#offeredAt = Math.floor(this.#meeting().now)
  }

  /** Keeps what is meant, or another plan, as one step that can be taken back. */
  keep(plan: Plan | undefined = this.#meant): void {
    this.#meant = undefined
    if (!plan || isSame(plan, this.#drawn)) return
    this.#undone = [...this.#undone.slice(-49), this.planning.plan.text]
    this.planning.plan.content = plan
  }

  undo(): void {
    const before = this.#undone.at(-1)
    if (before === undefined) return
    this.#undone = this.#undone.slice(0, -1)
    this.planning.plan.content = JSON.parse(before) as Plan
    this.chosen = undefined
  }

  /** Keeps all that somebody does as it is and nothing else for them, or lets them go. */
  turnKept(person: string): void {
    if (!this.#offered) this.keep(turnPersonKept(this.#drawn, person))
  }

  lengthOf(segment: string): number {
    const found = this.timeline.segments.find(({ id }) => id === segment)
    return found ? endOf(found) - found.startsAt : 0
  }

  choose(chosen: Chosen | undefined): void {
    if (this.#offered) return
    if (this.swapping !== undefined && chosen?.what === 'span') {
      this.keep(swapSpans(this.#drawn, this.swapping, chosen.id))
    }
    this.swapping = undefined
    this.chosen = chosen
  }

  /** The next stretch in which nobody has this duty, for whoever had it least recently. */
  addNext(duty: Duty): void {
    const plan = structuredClone(this.#drawn)
    addSpan({ rules: this.rules, crew: this.crew, plan }, duty)
    const added = plan.spans.at(-1)
    if (plan.spans.length === this.#drawn.spans.length || !added) return
    this.keep(plan)
    this.chosen = { what: 'span', id: added.id }
  }

  /** In every window that has none, or one in the first segment. */
  addNextStops(): void {
    const plan = structuredClone(this.#drawn)
    addStops({ rules: this.rules, crew: this.crew, plan })
    this.keep(plan)
  }

  add(duty: Duty): void {
    if (this.chosen?.what !== 'place') return
    const { person, at } = this.chosen
    const plan = addSpanAt(this.#drawn, { person, duty, at, lengthMs: this.lengthOf(at.segment) })
    const added = plan.spans.at(-1)
    if (plan === this.#drawn || !added) return
    this.keep(plan)
    this.chosen = { what: 'span', id: added.id }
  }

  addStop(at: Position): void {
    const plan = addStopAt(this.#drawn, at, true)
    this.keep(plan)
    this.chosen = { what: 'stop', id: plan.stops.at(-1)?.id ?? '' }
  }

  remove(): void {
    const { chosen } = this
    if (chosen?.what === 'span') this.keep(removeSpan(this.#drawn, chosen.id))
    if (chosen?.what === 'stop') this.keep(removeStop(this.#drawn, chosen.id))
    this.chosen = undefined
  }
}
