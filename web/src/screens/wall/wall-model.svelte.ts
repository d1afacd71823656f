/** What the wall shows and what its presses record, from (state, now) alone. */
import {
  allowances,
  nextHandover,
  obligations,
  phaseOf,
  type Phase,
  type Move,
} from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import type { RaceScreen } from '../../routes.ts'
import { crewNames } from '../../parts/crew.ts'
import { FAULT_PRESS, type FaultPress } from '../../parts/fault-press.ts'
import { lampOf } from '../../parts/lamp.ts'
import { raceHead } from '../../parts/race-head.ts'
import { Recorder } from '../../parts/recorder.svelte.ts'
import { lastSaid } from '../../parts/said.ts'
import { clockTime } from '../../parts/time.ts'
import { aboutPenalty } from './about-penalty.ts'
import { openCalls } from './calls.ts'
import { dueShown } from './due.ts'
import { energyShown, FILLED } from './energy-shown.ts'
import { factsOf } from './facts.ts'
import { faultsShown, UNNAMED_FAULT } from './faults.ts'
import { firstInOneColumn, lampClaims } from './lamp-claims.ts'
import { lanesToCome } from './lanes.ts'
import { driverNow, dutiesShown, handoverShown, postsOf, type Seen } from './people.ts'
import { restShown, stintShown } from './people.ts'
import { ribbonOf } from './ribbon-of.ts'
import { standingComes } from './standing-comes.svelte.ts'
import type { ToRecord } from './to-record.ts'
import { verbToRecord } from './verb-to-record.ts'
import { isSheet, type SheetVerb, type WallSheetName, type WallVerb } from './verb-words.ts'
import { WallMay } from './wall-may.svelte.ts'
import { WallVerbs } from './wall-verbs.svelte.ts'

const SECOND_MS = 1_000
const TEN_MS = 10_000
const SAID_LINES = 3

const AFTER: {
  readonly [P in Phase['phase']]?: { readonly screen: RaceScreen; readonly word: string }
} = {
  between: { screen: 'between', word: 'Between segments' },
  finished: { screen: 'finish', word: 'After the flag' },
}

const every = (now: number, stepMs: number) => Math.floor(now / stepMs) * stepMs

export class WallModel {
  readonly #of: () => MeetingPort
  readonly recorder: Recorder
  readonly may: WallMay
  readonly bar: WallVerbs
  /** The sheet that lies on the wall, and the place of the verb it came from. */
  sheet = $state<WallSheetName>()
  #place = 0
  /** The fault whose time is stamped while its name is being chosen. */
  naming = $state<string>()
  /** Whose sheet it is. */
  person = $state<string>()
  whole = $state(false)

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    this.recorder = new Recorder(meeting, () => this.crew.timeZone)
    this.may = new WallMay(meeting, this)
    this.bar = new WallVerbs(meeting, this)
  }

  /** Turns over once a second, and with each entry: what was just pressed has happened. */
  readonly #second = $derived.by(() => {
    const { state, now } = this.#of()
    const last = state.record.log.at(-1)?.at ?? 0
    return Math.min(now, Math.max(every(now, SECOND_MS), last))
  })
  readonly #tenAt = $derived.by(() => every(this.#of().now, TEN_MS))
  readonly crew = $derived.by(() => crewNames(this.#of().state, this.#second))
  readonly seen = $derived.by((): Seen => {
    const { state, now } = this.#of()
    return { state, now, crew: this.crew }
  })

  readonly phase = $derived.by(() => phaseOf(this.#of().state, this.#second))
  readonly head = $derived.by(() => raceHead(this.#of().state, this.#of().now))
  readonly seenBySecond = $derived.by((): Seen => ({
    state: this.#of().state,
    now: this.#second,
    crew: this.crew,
  }))
  /** For what weighs more. */
  readonly seenByTen = $derived.by((): Seen => ({
    state: this.#of().state,
    now: this.#tenAt,
    crew: this.crew,
  }))
  readonly facts = $derived.by(() =>
    factsOf(this.seenBySecond, this.may, standingComes.here?.standingShown),
  )
  readonly lanes = $derived.by(() => lanesToCome(this.#of().state, this.#second))

  readonly #obligations = $derived.by(() => obligations(this.#of().state, this.#second))
  readonly #due = $derived.by(() =>
    dueShown(this.#obligations, this.#of().now, {
      handoverAt: this.#handover?.at,
      // Calls that wait take the room.
      most: this.calls.length > 0 ? 1 : 2,
    }),
  )
  readonly #stint = $derived.by(() => stintShown(this.seen))
  readonly #faults = $derived.by(() => faultsShown(this.seenBySecond))
  readonly calls = $derived.by(() => openCalls(this.seenBySecond))
  readonly #askClock = $derived.by(() =>
    this.#obligations.some(({ kind, dueAt }) => kind === 'readTheClock' && dueAt <= this.#second),
  )

  readonly #lit = $derived.by(() =>
    lampOf(
      lampClaims({
        card: this.#due.card,
        obligations: this.#obligations,
        stint: this.#stint,
        calls: this.calls,
        askClockAt: this.#askClock ? this.#second : undefined,
        faults: this.#faults,
      }),
    ),
  )
  readonly first = $derived.by(() => firstInOneColumn(this.#lit, this.#faults))
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

  readonly energy = $derived.by(() =>
    this.phase.phase === 'finished' ? undefined : energyShown(this.seenBySecond),
  )
  /** A card that says the load ends has the press for it. */
  readonly fillsHere = $derived.by(
    () => this.may.fill && this.card?.id.startsWith('energyEmpty') !== true,
  )
  /** The rules count parts. */
  readonly hasParts = $derived.by(() => allowances(this.#of().state, this.#second).length > 0)
  /** The screen that a phase without a running segment has of its own. */
  readonly after = $derived.by(() => AFTER[this.phase.phase])
  readonly duties = $derived.by(() => dutiesShown(this.seenBySecond))
  readonly rest = $derived.by(() => restShown(this.seenBySecond))
  readonly handover = $derived.by(() => handoverShown(this.#handover, this.seen))
  readonly ribbon = $derived.by(() => ribbonOf(this.seenByTen, this.whole))
  readonly hourWords = (at: number) => clockTime(at, this.crew.timeZone)
  readonly said = $derived.by(() =>
    lastSaid(this.#of().state, SAID_LINES, {
      crew: this.crew,
      savedOf: (entry) => this.#of().saved(entry),
    }),
  )
  readonly #handover = $derived.by(() => nextHandover(this.#of().state, this.#second))
  readonly plannedMoves = $derived.by(() => this.#handover?.moves ?? [])
  readonly driving = $derived.by(() => driverNow(this.#of().state))
  readonly posts = $derived.by(() => postsOf(this.#of().state, this.#second))

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

  /** Where the bar has no place for it, the faults themselves have. */
  readonly noteFault = (): void => {
    this.#place = this.bar.lastPlace
    this.#open('fault')
  }

  readonly close = (): void => {
    this.sheet = undefined
    this.naming = undefined
    this.person = undefined
  }

  /** A sheet that is opened where its matter stands: its undo comes up above More. */
  readonly open = (sheet: WallSheetName, person?: string): void => {
    this.#place = this.bar.lastPlace
    this.naming = undefined
    this.sheet = this.sheet === sheet && this.person === person ? undefined : sheet
    this.person = person
  }

  readonly record = (press: ToRecord): string => {
    const entry = this.recordOn(press)
    this.close()
    return entry
  }

  readonly recordOn = (press: ToRecord): string =>
    this.recorder.record({ ...press, place: this.#place })

  readonly change = (moves: readonly Move[]): void => {
    this.record({ kind: 'handover.1', body: { moves: [...moves] }, word: 'Change' })
  }

  readonly nameFault = (fault: string): void => {
    if (this.naming !== undefined) {
      this.#of().correct(this.naming, { what: 'replace', body: { fault } }, 'named')
    }
    this.close()
  }

  readonly setClock = (shows: 'toGo' | 'gone', readingMs: number): void => {
    const segment = this.phase.segment?.item.id
    if (segment === undefined) return
    this.record({ kind: 'clockRead.1', body: { segment, shows, readingMs }, word: 'Clock' })
  }

  readonly call = (person: string, words: string): void => {
    this.record({ kind: 'call.1', body: { person, words }, word: 'Call' })
  }

  readonly note = (words: string): void => {
    this.record({ kind: 'note.1', body: { words }, word: 'Note' })
  }

  readonly takeDuty = ({ person, duty, post }: Move): void => {
    this.record({ kind: 'dutyTaken.1', body: { person, duty, post }, word: 'Duty' })
  }

  readonly heard = (call: string): void => {
    this.#place = this.bar.lastPlace
    this.record({ kind: 'answer.1', body: { call, answer: 'heard' }, word: 'Heard' })
  }

  /** The one press on the card in the middle. */
  readonly pressDue = (obligation: string): void => {
    this.#place = this.bar.lastPlace
    const [kind, entry = ''] = obligation.split(':')
    if (kind === 'servePenalty') this.record(aboutPenalty(entry, 'served'))
    if (kind === 'energyEmpty') this.fill()
  }

  readonly fill = (): void => {
    this.#place = this.bar.lastPlace
    this.record(FILLED)
  }

  readonly pressFault = (fault: string, press: FaultPress): void => {
    this.#place = this.bar.lastPlace
    if (press === 'name') {
      this.naming = fault
      this.sheet = 'fault'
      return
    }
    if (press === 'fit') {
      this.open('fit')
      return
    }
    const { kind, word } = FAULT_PRESS[press]
    this.record({ kind, body: { fault }, word })
  }

  #open(verb: SheetVerb): void {
    if (this.sheet === verb) {
      // A second press puts it away; only a fault's keeps waiting for its name.
      if (verb !== 'fault') this.close()
      return
    }
    this.close()
    if (verb === 'fault') {
      const body = { fault: UNNAMED_FAULT }
      this.naming = this.record({ kind: 'faultNoted.1', body, word: 'Fault' })
    }
    this.sheet = verb
  }

  #recordVerb(verb: Exclude<WallVerb, SheetVerb> | 'greenAgain'): void {
    const { state, now } = this.#of()
    const press = verbToRecord(verb, { state, now, phase: this.phase })
    if (press) this.record(press)
  }
}
