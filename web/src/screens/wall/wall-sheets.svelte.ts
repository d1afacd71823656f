/** What the sheets of the wall show, worked out only while one lies there, and what their presses record. */
import { dutyOf, handsOnCar, inForce, segmentClock } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { handsWords } from '../../parts/hands.ts'
import type { Presence } from '../../parts/penalty-words.ts'
import { aboutPenalty } from './about-penalty.ts'
import { fetchStayOut } from './after-first.ts'
import { carExchanged, carsShown, exchangeTiles } from './cars.ts'
import { callable, readyWords, wakeUp } from './calls.ts'
import { laneChoice, laneDrawn, startDrawn } from './draw.ts'
import { energyRead, energyTiles, FILLED } from './energy-shown.ts'
import { fitted, fitTiles } from './fitting.ts'
import { measured, quantityTiles } from './measuring.ts'
import type { Seen } from './people.ts'
import { presenceToRecord, whoIsHere } from './presence.ts'
import { laterTiles, programmeLater, segmentChanged, segmentsSaid } from './programme-said.ts'
import {
  lapsCorrected,
  lapsTiles,
  openPenalties,
  penalty,
  penaltyTiles,
  rulingTiles,
} from './race-control-said.ts'
import type * as StayOutShown from './stay-out-shown.ts'
import { standingFields, standingRead, type Typed } from './standing-read.ts'
import type { ToRecord } from './to-record.ts'
import { workList, workToRecord, type WorkItem } from './work-list.ts'

/** What is written down most, so that nobody types it. Common practice, no source. */
const READY_NOTES = [
  'Marbles on the track',
  'The car loses pace',
  'The car is good now',
  'Power sags',
  'Lap not counted?',
  'Talk about this later',
]

/** The wall beneath: what it sees, and how it records. */
export interface Wall {
  readonly seenBySecond: Seen
  readonly seenByTen: Seen
  readonly person: string | undefined
  /** Records and puts the sheet away. */
  readonly record: (press: ToRecord) => void
  /** Records, and the sheet stays for the next. */
  readonly recordOn: (press: ToRecord) => void
}

/** The rules of *stay out* weigh more than the rest of the wall; they come after the first picture. */
type Stay = typeof StayOutShown

export class WallSheets {
  readonly #wallOf: () => Wall
  readonly #of: () => MeetingPort
  #stay = $state.raw<Stay>()

  constructor(wall: () => Wall, meeting: () => MeetingPort) {
    this.#wallOf = wall
    this.#of = meeting
  }

  get #wall(): Wall {
    return this.#wallOf()
  }

  get #seen(): Seen {
    return this.#wall.seenBySecond
  }

  // The clock, faults, calls
  readonly reckoned = $derived.by(() => segmentClock(this.#seen.state, this.#seen.now) ?? {})
  readonly faultTiles = $derived.by(
    () => inForce(this.#seen.state, 'car', this.#seen.now)?.faultTiles ?? [],
  )
  readonly callable = $derived.by(() => callable(this.#seen.state, this.#seen.crew))

  // Race control said
  readonly penaltyTiles = penaltyTiles
  readonly lapsTiles = lapsTiles
  readonly rulingTiles = rulingTiles
  readonly laterTiles = (amount: number | undefined) =>
    laterTiles(this.#seen.state, this.#seen.now, amount)
  readonly segmentsSaid = (amount: number | undefined) =>
    segmentsSaid(this.#seen.state, this.#seen.now, amount)
  readonly openPenalties = $derived.by(() => openPenalties(this.#seen))
  readonly penalty = (what: string, amount: number | undefined): void => {
    const { state, now } = this.#seen
    this.#wall.record(penalty(state, now, { what, amount }))
  }
  readonly correctLaps = (sign: string, amount: number): void => {
    this.#wall.record(lapsCorrected(sign, amount))
  }
  readonly ruling = (words: string): void => {
    this.#wall.record({ kind: 'ruling.1', body: { words }, word: 'Ruling' })
  }
  readonly later = (minutes: string): void => {
    const press = programmeLater(this.#seen.state, this.#seen.now, minutes)
    if (press) this.#wall.record(press)
  }
  readonly segmentChanged = (segment: string, tile: string): void => {
    this.#wall.record(segmentChanged(segment, tile))
  }
  readonly aboutPenalty = (entry: string, press: 'served' | 'withdrawn' | 'wrong'): void => {
    this.#wall.record(aboutPenalty(entry, press))
  }

  // Standing
  readonly standing = $derived.by(() => standingFields(this.#seen))
  readonly canStand = (typed: Typed): boolean => standingRead(this.#seen, typed) !== undefined
  readonly stand = (typed: Typed): void => {
    const press = standingRead(this.#seen, typed)
    if (press) this.#wall.record(press)
  }

  // Work, measure, energy, parts
  readonly hands = $derived.by(() => handsWords(handsOnCar(this.#seen.state, this.#seen.now)))
  readonly work = $derived.by(() => workList(this.#seen))
  readonly tick = (item: WorkItem): void => {
    const press = workToRecord(item)
    if (press) this.#wall.recordOn(press)
  }
  readonly quantities = (valueMilli: number | undefined) => quantityTiles(this.#seen, valueMilli)
  readonly measure = (quantity: string, valueMilli: number): void => {
    this.#wall.recordOn(measured(quantity, valueMilli))
  }
  readonly energyTiles = energyTiles
  readonly readEnergy = (of: string, amount: number): void => {
    this.#wall.record(energyRead(of, amount))
  }
  readonly fill = (): void => {
    this.#wall.record(FILLED)
  }
  readonly parts = $derived.by(() => fitTiles(this.#seen))
  readonly fitPart = (of: string): void => {
    this.#wall.record(fitted(of))
  }

  readonly mayExchange = $derived.by(() => this.#of().may('carExchanged.1'))
  readonly cars = $derived.by(() => carsShown(this.#seen.state, this.#seen.now))
  readonly exchangeTiles = $derived.by(() => exchangeTiles(this.#seen.state, this.#seen.now))
  readonly exchange = (car: string): void => {
    this.#wall.record(carExchanged(car))
  }

  // Notes and lanes
  readonly readyNotes = READY_NOTES.map((words) => ({ id: words, word: words }))
  readonly lanes = $derived.by(() => laneChoice(this.#seen.state, this.#seen.now))
  readonly start = (choice: string, group?: string): void => {
    this.#wall.record(startDrawn(this.#seen.state, this.#seen.now, { choice, group }))
  }
  readonly draw = (segment: string, lane: string): void => {
    this.#wall.record(laneDrawn(segment, lane))
  }

  // People
  readonly people = $derived.by(() => whoIsHere(this.#seen))
  readonly person = $derived.by(() => this.people.find(({ id }) => id === this.#wall.person))
  readonly ready = $derived.by(() => {
    const { person } = this.#wall
    return readyWords(person === undefined ? undefined : dutyOf(this.#seen.state, person)?.duty)
  })
  readonly say = (person: string, state: Presence, minutes?: number): void => {
    this.#wall.record(this.#presence(person, state, minutes))
  }
  readonly sayOn = (person: string, state: Presence, minutes?: number): void => {
    this.#wall.recordOn(this.#presence(person, state, minutes))
  }
  readonly wake = (person: string, minutes: number): void => {
    this.#wall.record(wakeUp(person, Math.round(this.#of().now), minutes))
  }

  // The stint
  readonly stay = $derived.by(() => this.#stay?.stayOutShown(this.#wall.seenByTen))
  readonly stayKnown = $derived.by(() => this.#stay !== undefined)
  /** Where the server went away before it came, the sheet says so and the next opening asks again. */
  readonly fetchStay = async (): Promise<void> => {
    this.#stay ??= await fetchStayOut().catch(() => undefined)
  }
  readonly stayOut = (press: ToRecord): void => {
    this.#wall.record(press)
  }

  #presence(person: string, state: Presence, minutes: number | undefined): ToRecord {
    return presenceToRecord(person, state, { now: Math.round(this.#of().now), minutes })
  }
}
