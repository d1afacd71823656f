/** A rotation that is being worked out: what was asked for, how far it has come, and what came of it. */
import type { Cost, Impossible, NotDone, Worked, Working, WorkOut } from '@pitlamp/contract'
import { askWork } from '../../api/work.ts'
import { inForce } from '@pitlamp/race'
import type { MeetingPort } from '../../meeting/port.ts'
import type { RotationModel } from './rotation-model.svelte.ts'

const MINUTE_MS = 60_000

/** From equal shares to most laps: what an hour of one driver beyond the equal share costs. */
export const BALANCE_LAPS = [400, 120, 40, 10, 0] as const
export type Post = WorkOut['duties'][number]

/** Common practice, no source: what a captain who has said nothing is asked about first. */
const FIRST_TOLERANCE_MS = 15 * MINUTE_MS
const SAVE_TRIES = 5
const SAVE_AGAIN_REAL_MS = 300

export class WorkModel {
  readonly #rotation: RotationModel
  readonly #meeting: () => MeetingPort
  balance = $state(1)
  toleranceMs = $state(FIRST_TOLERANCE_MS)
  /** 0 leaves the stops where they stand. */
  stopEveryMs = $state(0)
  /** 0 changes duties at stops and ends only. */
  changeEveryMs = $state(0)
  duties = $state.raw<readonly Post[]>([])
  /** What is being worked on. */
  asked = $state.raw<WorkOut['want']>()
  standing = $state.raw<Working>()
  answers = $state.raw<readonly Worked[]>([])
  impossible = $state.raw<Impossible>()
  notDone = $state.raw<NotDone>()
  costs = $state.raw<readonly Cost[]>([])
  problem = $state<string>()
  /** Which answer lies on the strip. */
  shown = $state.raw<Worked>()
  #abort: AbortController | undefined

  constructor(rotation: RotationModel, meeting: () => MeetingPort) {
    this.#rotation = rotation
    this.#meeting = meeting
    const { spans } = rotation.plan
    this.duties = (['post', 'wall', 'bench'] as const).filter((one) =>
      spans.some(({ duty }) => duty === one),
    )
  }

  /** It was worked out from the drafts: without their rules it may break those the meeting goes by. */
  readonly isByDraftRules = $derived.by(() => {
    const { adoptable, rules } = this.#rotation.planning
    return adoptable.some((draft) => draft === rules)
  })

  async begin(want: WorkOut['want']): Promise<void> {
    this.stop()
    if (want !== 'costs') this.leave()
    this.costs = []
    this.problem = undefined
    const abort = new AbortController()
    this.#abort = abort
    this.asked = want
    const isCaptain = this.#meeting().role === 'captain'
    if (isCaptain && !(await this.#saved())) {
      this.#over(
        'The drafts could not be saved, and it is worked out from what is saved. Try again.',
      )
      return
    }
    if (abort.signal.aborted) return
    const { toleranceMs, stopEveryMs, changeEveryMs } = this
    const problem = await askWork(
      this.#meeting().id,
      {
        ...{ from: isCaptain ? 'drafts' : 'inForce', want, duties: [...this.duties] },
        balance: { toleranceMs, lapsPerHour: BALANCE_LAPS[this.balance] ?? 0 },
        ...(stopEveryMs > 0 ? { stopEveryMs } : {}),
        ...(changeEveryMs > 0 ? { changeEveryMs } : {}),
      },
      { signal: abort.signal, online: (line) => this.#hear(line) },
    )
    if (this.#abort === abort) this.#over(problem)
  }

  stop(): void {
    this.#abort?.abort()
    this.#over(undefined)
  }

  show(answer: Worked): void {
    this.shown = answer
    this.#rotation.offer(answer.plan)
  }

  /** One step that can be taken back. */
  take(answer: Worked): void {
    this.leave()
    this.#rotation.keep(answer.plan)
  }

  /** The plan alone, unless it needs people whom only the draft of the crew has. */
  async adopt(answer: Worked): Promise<void> {
    const only = this.needsCrew(answer) ? (['crew', 'plan'] as const) : (['plan'] as const)
    this.take(answer)
    await this.#rotation.planning.adopt('change', only)
  }

  /** Whether it names somebody whom the crew the meeting goes by lacks. */
  needsCrew({ plan }: Worked): boolean {
    const { state, now } = this.#meeting()
    const people = inForce(state, 'crew', now)?.people ?? []
    return plan.spans.some(({ person }) => !people.some(({ id }) => id === person))
  }

  leave(): void {
    this.shown = undefined
    this.answers = []
    this.impossible = undefined
    this.notDone = undefined
    this.costs = []
    this.#rotation.offer(undefined)
  }

  turnDuty(duty: Post): void {
    const has = this.duties.includes(duty)
    this.duties = has ? this.duties.filter((one) => one !== duty) : [...this.duties, duty]
  }

  #hear(line: Parameters<Parameters<typeof askWork>[2]['online']>[0]): void {
    switch (line.kind) {
      case 'waiting':
        return
      case 'working':
        this.standing = line
        return
      case 'worked':
        this.answers = [...this.answers, line]
        if (this.answers.length === 1) this.show(line)
        return
      case 'cost':
        this.costs = [...this.costs, line]
        return
      case 'impossible':
        this.impossible = line
        return
      case 'notDone':
        this.notDone = line
    }
  }

  #over(problem: string | undefined): void {
    this.#abort = undefined
    this.asked = undefined
    this.standing = undefined
    this.problem = problem
  }

  /** A save that is on its way is waited for. */
  async #saved(): Promise<boolean> {
    const { rules, crew, plan } = this.#rotation.planning
    for (let tries = 0; tries < SAVE_TRIES; tries += 1) {
      const saved = [await rules.save(), await crew.save(), await plan.save()]
      if (saved.every(Boolean)) return true
      await new Promise((resolve) => setTimeout(resolve, SAVE_AGAIN_REAL_MS))
    }
    return false
  }
}
