/** Between two segments: what it is, whether hands may touch the car, and what is to be done in order. */
import { inForce } from '../fold/in-force.ts'
import type { Said, State } from '../fold/state.ts'
import { segmentsOf } from '../time/programme.ts'
import { allowances, type AllowanceNow } from './allowances.ts'
import { breakOrParcFerme } from './during.ts'
import { handsOnCar, type HandsOnCar } from './hands-on-car.ts'
import { phaseOf } from './phase.ts'

export interface Between {
  readonly kind: 'laneChange' | 'break' | 'parcFerme'
  /** When the segment before it ended, and about when the next one begins. */
  readonly since: number
  readonly nextAt?: number
  readonly hands: HandsOnCar
  /** The last of each quantity, capitals aside, in the order of the log. */
  readonly measurements: readonly Said<'measured.1'>[]
  readonly allowances: readonly AllowanceNow[]
  /** The car's list, in its order, ticked since the segment ended. */
  readonly work: readonly BetweenWork[]
  /** The first that is not done. */
  readonly nextWork?: string
}

export interface BetweenWork {
  readonly work: string
  readonly done: boolean
  /** When that was last said. */
  readonly at?: number
}

/** Undefined unless one segment is over and another is to come. */
export function between(state: State, now: number): Between | undefined {
  const phase = phaseOf(state, now)
  const since = state.raceControl.runs.at(-1)?.endAt
  if (phase.phase !== 'between' || since === undefined) return undefined
  const isBreak = phase.between !== 'laneChange'
  const next = segmentsOf(state, now).find((one) => one.state === 'ahead')
  const work = workOf(state, since, now)
  const nextWork = work.find(({ done }) => !done)?.work
  return {
    kind: isBreak ? breakOrParcFerme(inForce(state, 'rules', now)) : 'laneChange',
    since,
    ...(next ? { nextAt: next.startsAt } : {}),
    hands: handsOnCar(state, now),
    measurements: lastMeasured(state),
    allowances: allowances(state, now),
    work,
    ...(nextWork === undefined ? {} : { nextWork }),
  }
}

function lastMeasured(state: State): readonly Said<'measured.1'>[] {
  const last = new Map(state.car.measurements.map((one) => [one.body.quantity.toLowerCase(), one]))
  return state.car.measurements.filter((one) => last.get(one.body.quantity.toLowerCase()) === one)
}

function workOf(state: State, since: number, now: number): readonly BetweenWork[] {
  return (inForce(state, 'car', now)?.betweenWork ?? []).map((work) => {
    const tick = state.car.work
      .filter((one) => one.at >= since && one.body.work.toLowerCase() === work.toLowerCase())
      .at(-1)
    return tick ? { work, done: tick.body.done, at: tick.at } : { work, done: false }
  })
}
