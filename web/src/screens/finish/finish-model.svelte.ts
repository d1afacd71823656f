/** What happens after the flag, a step at a time. Verbs and sheets are the wall's own. */
import { afterTheFlag, inForce, standing, summedStanding, type Body } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import { WallModel } from '../wall/wall-model.svelte.ts'
import { ResultPad, type Line } from './result-pad.svelte.ts'
import { stepsShown, type StepShown } from './steps.ts'
import { WeightPad } from './weight-pad.svelte.ts'

const PADS: ReadonlySet<StepShown['what']> = new Set([
  'weighing',
  'provisionalResult',
  'officialResult',
] as const)

type Verdict = Body<'scrutineering.1'>['verdict']
const VERDICT_WORD = {
  passed: 'Passed',
  passedWithAdvice: 'Passed with advice',
  failed: 'Failed',
} as const satisfies Record<Verdict, string>

export const VERDICTS = Object.entries(VERDICT_WORD).map(([id, word]) => ({
  id: id as Verdict,
  word,
}))

export class FinishModel {
  readonly #of: () => MeetingPort
  readonly wall: WallModel
  readonly weight = new WeightPad()
  readonly result = new ResultPad()
  /** The step that lies open: the next one until somebody chooses another. */
  #chosen = $state<StepShown['what']>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    this.wall = new WallModel(meeting)
  }

  readonly #after = $derived.by(() => afterTheFlag(this.#of().state, this.#of().now))
  readonly steps = $derived.by(() => {
    const timeZone = this.wall.crew.timeZone
    return this.#after ? stepsShown(this.#after, { now: this.#of().now, timeZone }) : []
  })
  /** Nothing lies open while protest time counts; what comes after it may be opened all the same. */
  readonly open = $derived.by(() => {
    const { next } = this.#after ?? {}
    return this.#chosen ?? (next === 'protestTime' ? undefined : next)
  })
  readonly may = $derived.by(() => this.#of().may('classification.1'))
  /** A pad lies open: digits are its own. */
  readonly typing = $derived.by(() => this.may && this.open !== undefined && PADS.has(this.open))
  readonly #standing = $derived.by(() => standing(this.#of().state, this.#of().now))
  /** Our own line, as it was read last or over all segments, and with what was taken and given since. */
  readonly ours = $derived.by(() => {
    const now = this.#standing
    if (!now) return undefined
    const { state } = this.#of()
    const sum = summedStanding(state, this.#of().now)?.ours
    const { place } = sum ?? now
    const { laps, sections } = sum?.distance ?? now.ours
    const line: Line = { place, laps, section: sections }
    return { kind: now.standing, line }
  })

  readonly choose = (what: StepShown['what']): void => {
    this.#chosen = this.open === what ? undefined : what
    if (what === 'officialResult' && this.ours) this.result.fill(this.ours.line)
  }

  readonly scrutineered = (verdict: Verdict): void => {
    const body = { when: 'final', verdict } as const
    this.#record('scrutineering.1', body, `Scrutineering ${VERDICT_WORD[verdict].toLowerCase()}`)
  }

  readonly weighed = (): void => {
    const valueMilli = this.weight.milli
    if (valueMilli === undefined) return
    this.#record('measured.1', { quantity: 'Weight', unit: 'g', valueMilli }, 'Weight')
    this.weight.clear()
  }

  readonly classified = (kind: 'provisional' | 'official'): void => {
    const { line } = this.result
    if (line) this.#classify(kind, line)
  }

  /** Official as it stands: one press. */
  readonly asItStands = (): void => {
    if (this.ours) this.#classify('official', this.ours.line)
  }

  readonly released = (): void => {
    this.#record('released.1', {}, 'Released')
  }

  #classify(kind: 'provisional' | 'official', line: Line): void {
    const lines = [{ ...line, entrant: this.#entrant(), ours: true }]
    this.#record('classification.1', { standing: kind, scope: 'whole', lines }, `${kind} result`)
  }

  /** As the last classification named us; else as the car is called. */
  #entrant(): string {
    const { state, now } = this.#of()
    const named = state.raceControl.classifications
      .flatMap(({ body }) => body.lines)
      .filter(({ ours }) => ours)
      .at(-1)
    return named?.entrant ?? inForce(state, 'car', now)?.name ?? 'Us'
  }

  #record<K extends Parameters<MeetingPort['press']>[0]>(
    kind: K,
    body: Body<K>,
    word: string,
  ): void {
    const said = word.charAt(0).toUpperCase() + word.slice(1)
    this.wall.recorder.record({ kind, body, word: said, place: 0 })
    this.#chosen = undefined
  }
}
