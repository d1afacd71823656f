/** The work list of the visit that is going on: what is on it, in which order, what was put off. */
import { handsOnCar, inForce, type Body, type Move, type StopState } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { FAULT_PRESS } from '../../parts/fault-press.ts'
import type { Tile } from '../../parts/shown.ts'
import type { WallModel } from '../wall/wall-model.svelte.ts'
import { freeHands, freeHandsWords } from './free-hands.ts'
import { currentJob, jobsOf, workId, type Job } from './jobs.ts'
import { workTiles } from './work-tiles.ts'

interface Around {
  readonly meeting: () => MeetingPort
  readonly wall: () => WallModel
  readonly stop: () => StopState | undefined
  /** The minimum is running, or waits for its moment. */
  readonly counting: () => boolean
  readonly moves: () => readonly Move[]
}

export class StopWork {
  readonly #around: Around
  #order = $state.raw<readonly string[]>([])
  #left = $state.raw<readonly string[]>([])
  /** The tiles of *More work* lie open. */
  adding = $state(false)

  constructor(around: Around) {
    this.#around = around
  }

  readonly #hotWork = $derived.by(() => {
    const { state, now } = this.#around.meeting()
    return inForce(state, 'plan', now)?.captain.hotWorkInStops ?? false
  })
  readonly jobs = $derived.by((): readonly Job[] => {
    const stop = this.#around.stop()
    if (!stop) return []
    const noHotWork = !this.#hotWork && this.#around.counting()
    return jobsOf(this.#around.wall().seen, {
      stop,
      order: this.#order,
      left: this.#left,
      noHotWork,
    })
  })
  readonly current = $derived.by(() => currentJob(this.jobs))
  readonly free = $derived.by(() =>
    freeHandsWords(freeHands(this.#around.wall().seen, this.#around.moves())),
  )
  /** False where the rules say so; what they do not say is asked, not forbidden. */
  readonly mayTouch = $derived.by(() => {
    const { state, now } = this.#around.meeting()
    return handsOnCar(state, now).allowed !== false
  })
  readonly tiles = $derived.by((): readonly Tile[] => {
    const { state, now } = this.#around.meeting()
    return workTiles(inForce(state, 'car', now), this.jobs)
  })

  readonly start = (id: string): void => {
    const { kind, word } = FAULT_PRESS.start
    const fault = this.#job(id)?.fault
    if (fault !== undefined) this.#recorder.record({ kind, body: { fault }, word, place: LIST })
  }

  readonly done = (id: string, place = LIST): void => {
    const job = this.#job(id)
    if (!job) return
    if (job.fault === undefined) this.#tick(job.what, true, { word: job.what, place })
    else {
      const { kind, word } = FAULT_PRESS.mended
      this.#recorder.record({ kind, body: { fault: job.fault }, word, place })
    }
    this.#take(id)
  }

  /** Not in this stop. Nothing happened to the car, so nothing is recorded until it goes out. */
  readonly leave = (id: string, place = LIST): void => {
    const job = this.#job(id)
    this.#left = [...this.#left, id]
    if (!job?.repairing || job.fault === undefined) return
    const { kind, word } = FAULT_PRESS.pause
    this.#recorder.record({ kind, body: { fault: job.fault }, word, place })
  }

  readonly takeUp = (id: string): void => {
    this.#take(id)
  }

  /** One place earlier in the list, or later. */
  readonly shift = (id: string, by: -1 | 1): void => {
    const ids = this.jobs.map((job) => job.id)
    const from = ids.indexOf(id)
    const to = from + by
    if (from < 0 || to < 0 || to >= ids.length) return
    ids.splice(from, 1)
    ids.splice(to, 0, id)
    this.#order = ids
  }

  /** A tile: a fault of this car is noted as one, any other work goes on the list. */
  readonly add = (tile: string): void => {
    this.adding = false
    const known = this.tiles.find(({ id }) => id === tile)
    if (!known) return
    if (tile.startsWith('fault ')) {
      const body = { fault: known.word }
      this.#recorder.record({ kind: 'faultNoted.1', body, word: 'Fault', place: 0 })
    } else this.#tick(known.word, false, { word: `${known.word} to do`, place: 0 })
  }

  /** What goes out with the car. Faults nobody touched stay as they were. */
  readonly asWork = (): NonNullable<Body<'stopOut.1'>['work']> =>
    this.jobs
      .filter(({ fault, done, left }) => fault === undefined || done || left)
      .map(({ what, fault, done }) =>
        fault === undefined ? { what, done } : { what, fault, done },
      )

  clear(): void {
    this.#order = []
    this.#left = []
  }

  get #recorder() {
    return this.#around.wall().recorder
  }

  #job(id: string): Job | undefined {
    return this.jobs.find((job) => job.id === id)
  }

  #take(id: string): void {
    this.#left = this.#left.filter((one) => one !== id)
  }

  #tick(work: string, done: boolean, { word, place }: { word: string; place: number }): void {
    this.#take(workId(work))
    this.#recorder.record({ kind: 'workTicked.1', body: { work, done }, word, place })
  }
}

/** A press in the list can be taken back above the verb for what is next on it. */
const LIST = 1
