/** After the flag: scrutineering, weighing, the result and its protest time, the car released. */
import { inForce } from '../fold/in-force.ts'
import type { Said, State } from '../fold/state.ts'
import { penalties, type Protest } from '../standing/penalties.ts'
import { phaseOf } from './phase.ts'

export interface AfterTheFlag {
  /** In the order in which they usually come: common practice, no source. */
  readonly steps: readonly AfterStep[]
  /** The first that is still to come or counts; undefined once all is done. */
  readonly next?: AfterStep['what']
}

export interface AfterStep {
  readonly what:
    | 'scrutineering'
    | 'weighing'
    | 'provisionalResult'
    | 'protestTime'
    | 'officialResult'
    | 'released'
  /** `failed` is done too: nothing more comes of it by itself. */
  readonly state: 'wanted' | 'counting' | 'done' | 'failed'
  /** When it was; of protest time, when it began. */
  readonly at?: number
  /** Of protest time: when it is over. */
  readonly until?: number
  readonly entry?: string
  /** Passed, with advice. */
  readonly advice?: true
  /** What the scales showed, thousandths of a gram. */
  readonly valueMilli?: number
}

/** Undefined before the flag. Protest time is listed only where it is known. */
export function afterTheFlag(state: State, now: number): AfterTheFlag | undefined {
  const flagAt = state.raceControl.runs.at(-1)?.endAt
  if (flagAt === undefined || phaseOf(state, now).phase !== 'finished') return undefined
  const protest = protestTime(state, { flagAt, now })
  const steps: readonly AfterStep[] = [
    scrutineering(state),
    weighing(state, flagAt),
    result('provisionalResult', resultOf(state, 'provisional', flagAt)),
    ...(protest ? [protest] : []),
    result('officialResult', resultOf(state, 'official', flagAt)),
    released(state),
  ]
  const next = steps.find((step) => step.state === 'wanted' || step.state === 'counting')
  return { steps, ...(next ? { next: next.what } : {}) }
}

/**
 * The protest time of the provisional result as the captain entered it, from when the result was entered. Undefined
 * without either, and once there is an official result.
 */
export function resultProtest(
  state: State,
  now: number,
): { readonly entry: string; readonly protest: Protest } | undefined {
  const flagAt = state.raceControl.runs.at(-1)?.endAt
  const lengthMs = inForce(state, 'plan', now)?.captain.protestMs
  if (flagAt === undefined || lengthMs === undefined) return undefined
  const provisional = resultOf(state, 'provisional', flagAt)
  if (!provisional || resultOf(state, 'official', flagAt)) return undefined
  const until = provisional.at + lengthMs
  return { entry: provisional.entry, protest: { until, lengthMs, over: now >= until } }
}

/** A later verdict takes the place of an earlier one. */
function scrutineering(state: State): AfterStep {
  const last = state.raceControl.verdicts.filter(({ body }) => body.when === 'final').at(-1)
  if (!last) return { what: 'scrutineering', state: 'wanted' }
  const { entry, at, body } = last
  const verdict = body.verdict === 'failed' ? 'failed' : 'done'
  const advice = body.verdict === 'passedWithAdvice' ? { advice: true as const } : {}
  return { what: 'scrutineering', state: verdict, at, entry, ...advice }
}

/** Anything measured in grams after the flag. */
function weighing(state: State, flagAt: number): AfterStep {
  const last = state.car.measurements
    .filter(({ at, body }) => at >= flagAt && body.unit === 'g')
    .at(-1)
  if (!last) return { what: 'weighing', state: 'wanted' }
  const { entry, at, body } = last
  return { what: 'weighing', state: 'done', at, entry, valueMilli: body.valueMilli }
}

type Result = Said<'classification.1'>

/** The last one of the whole race after the flag. */
function resultOf(
  state: State,
  standing: Result['body']['standing'],
  flagAt: number,
): Result | undefined {
  return state.raceControl.classifications
    .filter(({ at, body }) => at >= flagAt && body.scope === 'whole' && body.standing === standing)
    .at(-1)
}

function result(
  what: 'provisionalResult' | 'officialResult',
  found: Result | undefined,
): AfterStep {
  if (!found) return { what, state: 'wanted' }
  return { what, state: 'done', at: found.at, entry: found.entry }
}

/** Of the result and of penalties still open to protest after the flag: until the last of them is over. */
function protestTime(
  state: State,
  { flagAt, now }: { readonly flagAt: number; readonly now: number },
): AfterStep | undefined {
  const protests = penalties(state, now).flatMap(({ penalty, protest }) =>
    protest && protest.until > flagAt ? [{ from: penalty.at, until: protest.until }] : [],
  )
  const provisional = resultOf(state, 'provisional', flagAt)
  const lengthMs = inForce(state, 'plan', now)?.captain.protestMs
  if (provisional && lengthMs !== undefined) {
    protests.push({ from: provisional.at, until: provisional.at + lengthMs })
  }
  if (protests.length === 0) return undefined
  const at = Math.min(...protests.map((one) => one.from))
  const until = Math.max(...protests.map((one) => one.until))
  const isOver = now >= until || resultOf(state, 'official', flagAt) !== undefined
  return { what: 'protestTime', state: isOver ? 'done' : 'counting', at, until }
}

function released(state: State): AfterStep {
  const { releasedAt } = state.raceControl
  if (releasedAt === undefined) return { what: 'released', state: 'wanted' }
  return { what: 'released', state: 'done', at: releasedAt }
}
