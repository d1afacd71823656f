/** What the lane change shows and records. On the wall verbs and sheets are the wall's own. */
import { laneChange, LIGHTS, type Kind, type LaneChange, type Move } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { raceHead } from '../../parts/race-head.ts'
import { Recorder } from '../../parts/recorder.svelte.ts'
import { clockTime } from '../../parts/time.ts'
import {
  carWords,
  handsShown,
  laneShown,
  stepLine,
  titleOf,
  waitsOf,
  wayWords,
  whoWords,
  type StepLine,
  type Telling,
} from './lane-change-face.ts'

const SECOND_MS = 1_000
/** Undo of a tick stands over the middle of the bar. */
const TICKED = 2

const STANDS_HERE = /^(?:lightTest|nextDuty|relief):/

const LIGHTS_WORD = {
  open: 'Lights: not tried yet',
  inOrder: 'Lights tried, in order',
  notInOrder: 'Lights tried, not in order',
} as const
const DARK_WORD = { dark: 'the next segment is dark', partly: 'it gets dark in the next segment' }

export class LaneChangeModel {
  readonly #of: () => MeetingPort
  readonly recorder: Recorder

  /** On the wall its own recorder, so that there is one undo. */
  constructor(meeting: () => MeetingPort, recorder?: Recorder) {
    this.#of = meeting
    this.recorder = recorder ?? new Recorder(meeting, () => this.#crew.timeZone)
  }

  readonly #second = $derived.by(() => Math.floor(this.#of().now / SECOND_MS) * SECOND_MS)
  readonly #crew = $derived.by(() => crewNames(this.#of().state, this.#second))
  /** By the second; an entry of this very second has happened. */
  readonly #change = $derived.by((): LaneChange | undefined => {
    const { state, now } = this.#of()
    return laneChange(state, Math.max(this.#second, Math.min(now, lastAt(state))))
  })
  readonly #telling = $derived.by((): Telling => {
    const { timeZone, nameOf } = this.#crew
    return { now: this.#second, timeZone, nameOf, person: this.#of().person }
  })

  readonly power = $derived.by(() => raceHead(this.#of().state, this.#second).power)
  readonly shown = $derived.by(() => {
    const change = this.#change
    if (!change) return undefined
    const telling = this.#telling
    const { from, to, kind } = change
    return {
      title: titleOf(change),
      hands: handsShown(change),
      isChange: kind === 'laneChange',
      from: laneShown(from),
      to: laneShown(to),
      way: wayWords(change),
      notDrawn: to === 'notDrawnYet',
      who: whoWords(change, telling),
      car: carWords(change),
      moves: this.#moves(change),
      work: change.work,
      lights: lightsShown(change.lights, telling.timeZone),
      waits: waitsOf(change, telling),
      lit: litOf(change),
    }
  })

  /** Alerts about what stands here anyway, as `Alerts` is told of them. */
  readonly told = $derived.by(() =>
    this.#of()
      .alerts.map(({ id }) => id.slice(0, id.lastIndexOf('@')))
      .filter((about) => STANDS_HERE.test(about)),
  )

  may(kind: Kind): boolean {
    return this.#of().may(kind)
  }

  readonly move = (id: string): void => {
    const step = this.#change?.moves.find((one) => stepLine(one, this.#telling).id === id)
    if (!step) return
    const moves: Move[] = [step.move]
    this.recorder.record({ kind: 'handover.1', body: { moves }, word: 'Move', place: TICKED })
  }

  readonly tick = (work: string, done: boolean): void => {
    const word = done ? work : `${work} again`
    this.recorder.record({ kind: 'workTicked.1', body: { work, done }, word, place: TICKED })
  }

  readonly tryLights = (inOrder: boolean): void => {
    const body = { what: LIGHTS, inOrder }
    const word = inOrder ? 'Lights in order' : 'Lights not in order'
    this.recorder.record({ kind: 'inspected.1', body, word, place: TICKED })
  }

  #moves({ moves }: LaneChange): readonly StepLine[] {
    return moves.map((one) => stepLine(one, this.#telling))
  }
}

function lastAt(state: MeetingPort['state']): number {
  return state.record.log.at(-1)?.at ?? 0
}

type Lit = 'lanes' | 'lights' | `work ${string}`

const PRESSES_MS = 60_000

/** The lane is what is looked for; a minute before the restart whatever is still open before green. */
function litOf({ planned, earliest, lights, work }: LaneChange): Lit {
  const nextMs = Math.min(planned.toGoMs, earliest?.toGoMs ?? Infinity)
  if (lights?.state === 'notInOrder') return 'lights'
  if (nextMs > PRESSES_MS) return 'lanes'
  if (lights?.state === 'open') return 'lights'
  const open = work.find(({ done }) => !done)
  return open ? `work ${open.work}` : 'lanes'
}

function lightsShown(lights: LaneChange['lights'], timeZone: string) {
  if (!lights) return undefined
  const { state, darkness, tried } = lights
  const dark = darkness.is === 'partly' ? DARK_WORD.partly : DARK_WORD.dark
  const at = tried === undefined ? '' : ` ${clockTime(tried.at, timeZone)}`
  return { state, words: `${LIGHTS_WORD[state]}${at}: ${dark}` }
}
