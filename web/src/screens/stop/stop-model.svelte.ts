/** What the Stop screen shows and records. Sheets and everyday verbs are the wall's own. */
import {
  countedMoments,
  handsOnCar,
  inForce,
  nextHandover,
  stopClock,
  type Move,
} from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { handsWords } from '../../parts/hands.ts'
import { moveWords } from '../../parts/moves.ts'
import type { WallModel } from '../wall/wall-model.svelte.ts'
import { cameInAt, jobsOf } from './jobs.ts'
import { stopFace } from './stop-face.ts'
import { stopVerbs } from './stop-verbs.ts'

/** A handover planned within this of the stop is meant for it. Common practice, no source. */
const MEANT_MS = 900_000

export class StopModel {
  readonly #of: () => MeetingPort
  readonly #wallOf: () => WallModel
  /** Whether the change goes with the car; as planned until somebody says. */
  #carries = $state<boolean>()
  #moves = $state.raw<readonly Move[]>()
  changing = $state(false)

  constructor(meeting: () => MeetingPort, wall: () => WallModel) {
    this.#of = meeting
    this.#wallOf = wall
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
  readonly hands = $derived.by(() => handsWords(handsOnCar(this.#of().state, this.#of().now)))
  readonly hotWork = $derived.by(
    () => inForce(this.#of().state, 'plan', this.#of().now)?.captain.hotWorkInStops ?? false,
  )
  readonly jobs = $derived.by(() => (this.stop ? jobsOf(this.wall.seen, this.stop) : []))

  /** The handover as it stood when the car came in: a plan that moves on meanwhile does not change it. */
  readonly #planned = $derived.by(() => {
    const { state } = this.#of()
    if (!this.stop) return undefined
    const cameIn = cameInAt(this.stop)
    const next = nextHandover(state, cameIn)
    if (!next) return undefined
    return { moves: next.moves, meant: Math.abs(next.at - cameIn) <= MEANT_MS }
  })
  readonly moves = $derived.by(() => this.#moves ?? this.#planned?.moves ?? [])
  readonly carries = $derived.by(
    () => this.moves.length > 0 && (this.#carries ?? this.#planned?.meant ?? false),
  )
  readonly change = $derived.by(() =>
    this.moves.map((move) => moveWords(move, this.wall.crew.nameOf)).join(', '),
  )

  /** The minimum is what this screen is about. */
  readonly told = $derived.by(() => (this.stop ? [`stopGo:${this.stop.entry}`] : []))

  readonly verbs = $derived.by(() => {
    const { state, now } = this.#of()
    if (!this.stop) return []
    return stopVerbs({
      phase: this.wall.phase,
      stop: this.stop,
      may: (kind) => this.#of().may(kind),
      undoable: this.#undoable,
      carOut: countedMoments(state, now).to,
    })
  })
  readonly mayMend = $derived.by(() => this.#of().may('repairFinished.1'))
  readonly undo = $derived.by(() => (this.#undoable ? undefined : this.wall.recorder.undo))
  readonly #undoable = $derived.by(() => {
    const undoable = this.#of().undoable
    return undoable !== undefined && undoable.entry === this.stop?.entry
  })

  readonly press = (id: string, place: number): void => {
    if (id === 'undoCarIn') this.#of().undo()
    else if (id === 'stopped') this.#record(place)
    else if (id === 'carOut') this.#carOut(place)
    else this.wall.press(id, place)
  }

  /** Starts a job or ticks it off. */
  readonly job = (id: string, press: 'start' | 'mended'): void => {
    this.wall.pressFault(id, press)
  }

  readonly carry = (carries: boolean): void => {
    this.#carries = carries
  }

  readonly takeMoves = (moves: readonly Move[]): void => {
    this.#moves = moves
    this.#carries = true
    this.changing = false
  }

  #record(place: number): void {
    const body = { moment: 'stopped' } as const
    this.wall.recorder.record({ kind: 'stopIn.1', body, word: 'Stopped', place })
  }

  #carOut(place: number): void {
    const { state, now } = this.#of()
    const moment = countedMoments(state, now).to
    const done = this.jobs.filter((job) => job.done)
    const work = done.map(({ id, what }) => ({ what, fault: id, done: true }))
    const body = {
      moment,
      work: work.length > 0 ? work : undefined,
      moves: this.carries ? [...this.moves] : undefined,
    }
    this.wall.recorder.record({ kind: 'stopOut.1', body, word: 'Car out', place })
    this.#moves = undefined
    this.#carries = undefined
  }
}
