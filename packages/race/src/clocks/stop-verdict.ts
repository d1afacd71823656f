/** Early or late against the minimum, and what leaving early costs by the rules: looked back at, and beforehand. */
import { inForce } from '../fold/in-force.ts'
import type { State, StopMoment, StopState } from '../fold/state.ts'
import { ruleValue, rulesOf, type Rule, type RuleOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { counted } from '../time/held.ts'
import { countedMoments, stopClock, type CountedMoments } from './stop-clock.ts'
import { visitsOf } from './visits.ts'

export interface StopVerdict extends CountedMoments {
  readonly stop: StopState
  readonly mandatory: boolean
  /** `noMinimum`: not a mandatory stop, or its minimum is not known. */
  readonly verdict: 'early' | 'exact' | 'late' | 'noMinimum' | 'cannotTell'
  /** The counted moments nobody recorded. */
  readonly missing: readonly StopMoment[]
  /** Between the two moments, without what held and what was before it started again. */
  readonly lastedMs?: number
  readonly heldMs?: number
  readonly minimumMs?: number
  /** Above 0 beyond the minimum, below 0 short of it. */
  readonly byMs?: number
  /** Where it was early: what each rule for it asks. */
  readonly costs: readonly StopCost[]
}

export interface StopCost {
  readonly rule: string
  readonly clause?: string
  readonly is: PenaltyIs | 'notKnown'
  readonly per: RuleOf<'penalty'>['value']['per']
  readonly scope: RuleOf<'penalty'>['value']['scope']
  /** In laps, seconds or places, by what it is. */
  readonly amount?: number
  /** For each second short, a second begun counts whole; for each lap it cannot be told. */
  readonly total?: number
}

type PenaltyIs = Exclude<RuleOf<'penalty'>['value']['is'], 'notKnownYet'>

const LEFT_EARLY = 'stop left early'

/** By the rules in force when its last moment was. Undefined where the log has no such visit. */
export function stopVerdict(state: State, stopEntry: string): StopVerdict | undefined {
  const stop = state.car.stops.find(({ entry }) => entry === stopEntry)
  if (!stop) return undefined
  const at = Math.max(...Object.values(stop.moments).map((moment) => moment.at))
  const mandatory = visitsOf(state, at).some((visit) => visit.stop === stop && visit.mandatory)
  const moments = countedMoments(state, at)
  const about = { stop, mandatory, ...moments, costs: [] }
  const began = stop.moments[moments.from]?.at
  const ended = stop.moments[moments.to]?.at
  const missing = ([moments.from, moments.to] as const).filter((one) => !stop.moments[one])
  if (began === undefined || ended === undefined)
    return { ...about, verdict: 'cannotTell', missing }
  const { countedMs: lastedMs, heldMs } = counted(state, 'stopMinimum', { from: began, to: ended })
  const lasted = { ...about, missing, lastedMs, heldMs }
  const rules = inForce(state, 'rules', at)?.rules ?? []
  const minimumMs = known(ruleValue(rules, 'stopMinimum')?.minimumMs)
  if (!mandatory || minimumMs === undefined) return { ...lasted, verdict: 'noMinimum' }
  const byMs = lastedMs - minimumMs
  const verdict = byMs < 0 ? 'early' : byMs > 0 ? 'late' : 'exact'
  return { ...lasted, verdict, minimumMs, byMs, costs: costsOf(rules, -byMs) }
}

export interface LeavingNow {
  /** What is missing of the minimum; above 0. */
  readonly shortMs: number
  readonly costs: readonly StopCost[]
}

/**
 * What it would come to if the car in left now, by the rules in force now. Undefined where that breaks no minimum:
 * the car is out, it is not a mandatory stop, its minimum is not known, has not begun to count, or is over.
 */
export function leavingNow(state: State, now: number): LeavingNow | undefined {
  const stop = stopClock(state, now)
  const shortMs = stop?.remainingMs ?? 0
  if (stop?.countedFrom === undefined || shortMs <= 0) return undefined
  return { shortMs, costs: costsOf(inForce(state, 'rules', now)?.rules ?? [], shortMs) }
}

function costsOf(rules: readonly Rule[], shortMs: number): readonly StopCost[] {
  if (shortMs <= 0) return []
  return rulesOf(rules, 'penalty')
    .filter(isForLeavingEarly)
    .map((rule) => costOf(rule, shortMs))
}

function isForLeavingEarly({ value }: RuleOf<'penalty'>): boolean {
  return value.for.toLowerCase() === LEFT_EARLY
}

function costOf({ id, clause, value }: RuleOf<'penalty'>, shortMs: number): StopCost {
  const { per, scope } = value
  const is = known(value.is) ?? 'notKnown'
  const amount = known(value.amount)
  const times = { occurrence: 1, secondShort: Math.ceil(shortMs / 1_000), lap: undefined }[per]
  return {
    ...{ rule: id, is, per, scope },
    ...(clause === undefined ? {} : { clause }),
    ...(amount === undefined ? {} : { amount }),
    ...(amount === undefined || times === undefined ? {} : { total: amount * times }),
  }
}
