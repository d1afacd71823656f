/** What the wall shows and what its presses record, from (state, now) alone. */
import {
  countedMoments,
  inForce,
  nextHandover,
  obligations,
  phaseOf,
  segmentClock,
  type Body,
  type Move,
} from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { INCIDENT_WORD } from '../../parts/entry-words.ts'
import { FAULT_PRESS, type FaultPress } from '../../parts/fault-press.ts'
import { lampOf, type LampClaim } from '../../parts/lamp.ts'
import { raceHead } from '../../parts/race-head.ts'
import { Recorder } from '../../parts/recorder.svelte.ts'
import { lastSaid } from '../../parts/said.ts'
import { clockTime } from '../../parts/time.ts'
import { callable, openCalls, unanswered } from './calls.ts'
import { dueShown } from './due.ts'
import { factsOf } from './facts.ts'
import { faultsShown, UNNAMED_FAULT } from './faults.ts'
import { driverNow, dutiesShown, handoverShown, postsOf, stintShown, type Seen } from './people.ts'
import { ribbonOf } from './ribbon-of.ts'
import { plannedStopNear } from './stop-to-serve.ts'
import {
  isSheet,
  moreFor,
  verbsFor,
  type SheetVerb,
  type VerbContext,
  type WallVerb,
} from './verbs.ts'

const SECOND_MS = 1_000
const RIBBON_STEP_MS = 10_000
const SAID_LINES = 3

const every = (now: number, stepMs: number) => Math.floor(now / stepMs) * stepMs

export class WallModel {
  readonly #of: () => MeetingPort
  readonly recorder: Recorder
  /** The sheet that lies on the wall, and the place of the verb it came from. */
  sheet = $state<SheetVerb>()
  #place = 0
  /** The fault whose time is stamped while its name is being chosen. */
  naming = $state<string>()
  whole = $state(false)

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    this.recorder = new Recorder(meeting, () => this.crew.timeZone)
  }

  readonly #second = $derived.by(() => every(this.#of().now, SECOND_MS))
  readonly #ribbonAt = $derived.by(() => every(this.#of().now, RIBBON_STEP_MS))
  readonly crew = $derived.by(() => crewNames(this.#of().state, this.#second))
  readonly seen = $derived.by((): Seen => {
    const { state, now } = this.#of()
    return { state, now, crew: this.crew }
  })

  readonly phase = $derived.by(() => phaseOf(this.#of().state, this.#second))
  readonly head = $derived.by(() => raceHead(this.#of().state, this.#of().now))
  readonly facts = $derived.by(() => factsOf(this.#of().state, this.#second, this.crew.timeZone))

  readonly #obligations = $derived.by(() => obligations(this.#of().state, this.#second))
  readonly #due = $derived.by(() => dueShown(this.#obligations, this.#of().now, this.#handover?.at))
  readonly #stint = $derived.by(() => stintShown(this.seen))
  readonly #faults = $derived.by(() => faultsShown(this.seen))
  readonly calls = $derived.by(() => openCalls({ state: this.#of().state, crew: this.crew }))
  readonly #askClock = $derived.by(() =>
    this.#obligations.some(({ kind, dueAt }) => kind === 'readTheClock' && dueAt <= this.#second),
  )

  readonly #lit = $derived.by(() => lampOf(this.#claims()))
  readonly stint = $derived.by(() => ({ ...this.#stint, lit: this.#lit === 'stint' }))
  readonly card = $derived.by(() => {
    const { card } = this.#due
    return card && { ...card, lit: this.#lit === `due ${card.id}` }
  })
  readonly lines = $derived.by(() => this.#due.lines)
  readonly told = $derived.by(() => this.#due.told)
  readonly faults = $derived.by(() =>
    this.#faults.map((fault) => ({ ...fault, lit: this.#lit === `fault ${fault.id}` })),
  )
  readonly clockAsked = $derived.by(() =>
    this.#askClock ? { lit: this.#lit === 'clock' } : undefined,
  )
  readonly litCall = $derived.by(() =>
    this.#lit?.startsWith('call ') ? this.#lit.slice(5) : undefined,
  )

  readonly duties = $derived.by(() => dutiesShown(this.seen))
  readonly handover = $derived.by(() => handoverShown(this.#handover, this.seen))
  readonly ribbon = $derived.by(() =>
    ribbonOf({ state: this.#of().state, now: this.#ribbonAt, crew: this.crew }, this.whole),
  )
  readonly hourWords = (at: number) => clockTime(at, this.crew.timeZone)
  readonly said = $derived.by(() =>
    lastSaid(this.#of().state, SAID_LINES, {
      crew: this.crew,
      savedOf: (entry) => this.#of().saved(entry),
    }),
  )
  readonly #verbContext = $derived.by((): VerbContext => ({
    phase: this.phase,
    may: (kind) => this.#of().may(kind),
    hasCrew: this.crew.people.length > 0,
    carIn: countedMoments(this.#of().state, this.#second).from,
  }))
  readonly verbs = $derived.by(() => verbsFor(this.#verbContext))
  readonly more = $derived.by(() => moreFor(this.#verbContext))
  readonly mayMend = $derived.by(() => this.#of().may('repairFinished.1'))
  readonly mayAnswer = $derived.by(() => this.#of().may('answer.1'))
  readonly faultTiles = $derived.by(
    () => inForce(this.#of().state, 'car', this.#second)?.faultTiles ?? [],
  )
  readonly #handover = $derived.by(() => nextHandover(this.#of().state, this.#second))
  readonly plannedMoves = $derived.by(() => this.#handover?.moves ?? [])
  readonly driving = $derived.by(() => driverNow(this.#of().state))
  readonly posts = $derived.by(() => postsOf(this.#of().state, this.#second))
  readonly callable = $derived.by(() => callable(this.#of().state, this.crew))
  readonly reckoned = $derived.by(() => segmentClock(this.#of().state, this.#second) ?? {})

  readonly press = (id: string, place: number): void => {
    this.#place = place
    const verb = id as WallVerb | 'greenAgain'
    if (isSheet(verb)) this.#open(verb)
    else this.#recordVerb(verb)
  }

  /** A press on the More sheet counts at More's place. */
  readonly pressMore = (id: string): void => {
    this.sheet = undefined
    this.press(id, this.#place)
  }

  readonly close = (): void => {
    this.sheet = undefined
    this.naming = undefined
  }

  readonly change = (moves: readonly Move[]): void => {
    this.#record('handover.1', { moves: [...moves] }, 'Change')
  }

  readonly nameFault = (fault: string): void => {
    if (this.naming !== undefined) {
      this.#of().correct(this.naming, { what: 'replace', body: { fault } }, 'named')
    }
    this.close()
  }

  readonly setClock = (shows: 'toGo' | 'gone', readingMs: number): void => {
    const segment = this.phase.segment?.item.id
    if (segment !== undefined) this.#record('clockRead.1', { segment, shows, readingMs }, 'Clock')
  }

  readonly call = (person: string, words: string): void => {
    this.#record('call.1', { person, words }, 'Call')
  }

  readonly note = (words: string): void => {
    this.#record('note.1', { words }, 'Note')
  }

  readonly takeDuty = ({ person, duty, post }: Move): void => {
    this.#record('dutyTaken.1', { person, duty, post }, 'Duty')
  }

  readonly heard = (call: string): void => {
    this.#place = this.verbs.length - 1
    this.#record('answer.1', { call, answer: 'heard' }, 'Heard')
  }

  readonly pressFault = (fault: string, press: FaultPress): void => {
    this.#place = this.verbs.length - 1
    if (press === 'name') {
      this.naming = fault
      this.sheet = 'fault'
      return
    }
    const { kind, word } = FAULT_PRESS[press]
    this.#record(kind, { fault }, word)
  }

  #open(verb: SheetVerb): void {
    if (this.sheet === verb) {
      // A second press puts it away; only a fault's keeps waiting for its name.
      if (verb !== 'fault') this.close()
      return
    }
    this.naming = undefined
    if (verb === 'fault') {
      this.naming = this.#record('faultNoted.1', { fault: UNNAMED_FAULT }, 'Fault')
    }
    this.sheet = verb
  }

  #record<K extends Parameters<MeetingPort['press']>[0]>(
    kind: K,
    body: Body<K>,
    word: string,
  ): string {
    this.sheet = undefined
    return this.recorder.record({ kind, body, word, place: this.#place })
  }

  #recordVerb(verb: Exclude<WallVerb, SheetVerb> | 'greenAgain'): void {
    const { next, segment } = this.phase
    switch (verb) {
      case 'green':
        if (next) this.#record('green.1', { segment: next.item.id }, 'Green')
        break
      case 'greenAgain':
        if (segment) this.#record('green.1', { segment: segment.item.id }, 'Green')
        break
      case 'powerOn':
        this.#record('powerOn.1', {}, 'Power on')
        break
      case 'powerOff':
        this.#record('trackCall.1', {}, 'Power off')
        break
      case 'redFlag':
        this.#record('redFlag.1', {}, 'Red flag')
        break
      case 'segmentOver':
        if (segment) this.#record('segmentEnd.1', { segment: segment.item.id }, 'Segment over')
        break
      case 'carIn':
        this.#carIn()
        break
      case 'deSlot':
      case 'wrongLane':
      case 'contact':
      case 'stuck':
        this.#record('incident.1', { what: verb }, INCIDENT_WORD[verb])
    }
  }

  #carIn(): void {
    const { state, now } = this.#of()
    const moment = countedMoments(state, now).from
    this.#record('stopIn.1', { moment, planned: plannedStopNear(state, now)?.id }, 'Car in')
  }

  #claims(): readonly LampClaim[] {
    const { card } = this.#due
    const dueOf = (id: string) => this.#obligations.find((one) => one.id === id)?.dueAt ?? 0
    const stintEnd = this.#obligations.find(({ kind }) => kind === 'stintEnd')
    return [
      // A stop that ends the stint comes before it: it says what to do.
      ...(card ? [{ part: `due ${card.id}`, urgency: card.urgency, dueAt: dueOf(card.id) }] : []),
      { part: 'stint', urgency: this.#stint.urgency, dueAt: stintEnd?.dueAt ?? 0 },
      ...unanswered(this.#of().state).map(({ entry, at }) => ({
        part: `call ${entry}`,
        urgency: 'soon' as const,
        dueAt: at,
      })),
      ...(this.#askClock ? [{ part: 'clock', urgency: 'soon' as const, dueAt: this.#second }] : []),
      ...this.#faults.map(({ id, repairing }) => ({
        part: `fault ${id}`,
        urgency: 'calm' as const,
        dueAt: 0,
        waiting: !repairing,
      })),
    ]
  }
}
