/** What the Stop screen shows and records. Sheets and everyday verbs are the wall's own; the work is `work`. */
import {
  countedMoments,
  handsOnCar,
  nextHandover,
  obligations,
  stopClock,
  type Move,
  type ObligationKind,
} from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { handsWords } from '../../parts/hands.ts'
import { moveWords } from '../../parts/moves.ts'
import type { WallModel } from '../wall/wall-model.svelte.ts'
import { cameInAt } from './jobs.ts'
import { momentsShown } from './moments.ts'
import { stopFace } from './stop-face.ts'
import { PLACE, stopVerbs } from './stop-verbs.ts'
import { StopWork } from './stop-work.svelte.ts'

/** A handover planned within this of the stop is meant for it. Common practice, no source. */
const MEANT_MS = 900_000

const OF_A_CHANGE: ReadonlySet<ObligationKind> = new Set([
  'stintEnd',
  'nextDuty',
  'relief',
] as const)

export class StopModel {
  readonly #of: () => MeetingPort
  readonly #wallOf: () => WallModel
  /** Whether the change goes with the car; as planned until somebody says. */
  #carries = $state<boolean>()
  #moves = $state.raw<readonly Move[]>()
  changing = $state(false)
  readonly work: StopWork

  constructor(meeting: () => MeetingPort, wall: () => WallModel) {
    this.#of = meeting
    this.#wallOf = wall
    this.work = new StopWork({
      meeting,
      wall,
      stop: () => this.stop,
      counting: () => this.face?.counts === 'down' || this.face?.counts === 'nothingYet',
      moves: () => (this.carries ? this.moves : []),
    })
  }

  get wall(): WallModel {
    return this.#wallOf()
  }

  readonly #clock = $derived.by(() => stopClock(this.#of().state, this.#of().now))
  readonly stop = $derived.by(() => this.#clock?.stop)
  readonly face = $derived.by(() => {
    const { state, now, clock } = this.#of()
    return (
      this.#clock && stopFace(this.#clock, { state, now, clock, timeZone: this.wall.crew.timeZone })
    )
  })
  readonly moments = $derived.by(() => {
    const { state, now } = this.#of()
    return this.stop
      ? momentsShown(this.stop, { state, now, timeZone: this.wall.crew.timeZone })
      : []
  })
  /** Where the minimum counts to the pit exit, when the car left its box is worth knowing too. */
  readonly mayLeave = $derived.by(() => {
    const { state, now } = this.#of()
    return countedMoments(state, now).to === 'pitExit' && this.#of().may('stopOut.1')
  })
  readonly hands = $derived.by(() => handsWords(handsOnCar(this.#of().state, this.#of().now)))

  /** The handover as it stood when the car came in: a plan that moves on meanwhile does not change it. */
  readonly #planned = $derived.by(() => {
    const { state } = this.#of()
    if (!this.stop) return undefined
    const cameIn = cameInAt(this.stop)
    const next = nextHandover(state, cameIn)
    if (!next) return undefined
    return { at: next.at, moves: next.moves, meant: Math.abs(next.at - cameIn) <= MEANT_MS }
  })
  readonly moves = $derived.by(() => this.#moves ?? this.#planned?.moves ?? [])
  readonly carries = $derived.by(
    () => this.moves.length > 0 && (this.#carries ?? this.#planned?.meant ?? false),
  )
  readonly change = $derived.by(() =>
    this.moves.map((move) => moveWords(move, this.wall.crew.nameOf)).join(', '),
  )

  /** The minimum is what this screen is about, and the change planned for it stands in the list. */
  readonly told = $derived.by(() => {
    const { state, now } = this.#of()
    if (!this.stop) return []
    const { at = NaN, meant } = this.#planned ?? {}
    const ofTheChange = obligations(state, now)
      .filter(({ kind, dueAt }) => meant && OF_A_CHANGE.has(kind) && Math.abs(dueAt - at) < 1_000)
      .map(({ id }) => id)
    return [`stopGo:${this.stop.entry}`, ...ofTheChange]
  })

  readonly verbs = $derived.by(() => {
    const { state, now } = this.#of()
    if (!this.stop) return []
    return stopVerbs({
      phase: this.wall.phase,
      stop: this.stop,
      may: (kind) => this.#of().may(kind),
      undoable: this.#undoable,
      carOut: countedMoments(state, now).to,
      job: this.work.current?.what,
    })
  })
  readonly mayMend = $derived.by(() => this.#of().may('repairFinished.1'))
  readonly undo = $derived.by(() => (this.#undoable ? undefined : this.wall.recorder.undo))
  readonly #undoable = $derived.by(() => {
    const undoable = this.#of().undoable
    return undoable !== undefined && undoable.entry === this.stop?.entry
  })

  readonly press = (id: string, place: number): void => {
    const job = this.work.current?.id
    if (id !== 'moreWork') this.work.adding = false
    if (id === 'undoCarIn') this.#of().undo()
    else if (id === 'stopped') this.#record(place)
    else if (id === 'moreWork') this.#moreWork()
    else if (id === 'jobDone' && job !== undefined) this.work.done(job, PLACE.jobDone)
    else if (id === 'leaveJob' && job !== undefined) this.work.leave(job, PLACE.leaveJob)
    else if (id === 'carOut') this.#carOut(place)
    else this.wall.press(id, place)
  }

  /** The car left its box, and the minimum counts on to the pit exit. */
  readonly leaves = (): void => {
    this.#out('leaving', LEAVES)
  }

  readonly carry = (carries: boolean): void => {
    this.#carries = carries
  }

  readonly takeMoves = (moves: readonly Move[]): void => {
    this.#moves = moves
    this.#carries = true
    this.changing = false
  }

  #moreWork(): void {
    this.wall.close()
    this.work.adding = !this.work.adding
  }

  #record(place: number): void {
    const body = { moment: 'stopped' } as const
    this.wall.recorder.record({ kind: 'stopIn.1', body, word: 'Stopped', place })
  }

  #carOut(place: number): void {
    const { state, now } = this.#of()
    this.#out(countedMoments(state, now).to, { word: 'Car out', place })
  }

  #out(moment: 'leaving' | 'pitExit', { word, place }: { word: string; place: number }): void {
    const work = this.work.asWork()
    const body = {
      moment,
      work: work.length > 0 ? work : undefined,
      moves: this.carries ? [...this.moves] : undefined,
    }
    this.wall.recorder.record({ kind: 'stopOut.1', body, word, place })
    this.#moves = undefined
    this.#carries = undefined
    this.work.clear()
  }
}

const LEAVES = { word: 'Leaving', place: 5 }
