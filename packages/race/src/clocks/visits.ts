/** Visits of the car judged by the rules: which are mandatory stops, and which window each serves. */
import { firstToClose } from '../rules/first-to-close.ts'
import type { Plan } from '../documents/plan.ts'
import type { Regulations } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { State, StopState } from '../fold/state.ts'
import { ruleValue, type RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { clockAt } from '../time/clock-map.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { countsOf, runAt } from '../time/runs-that-count.ts'

type Windows = Exclude<RuleValue<'stopWindows'>['windows'], 'notKnownYet'>
export type Window = Windows[number]

export interface Visit {
  readonly stop: StopState
  readonly mandatory: boolean
  readonly serves?: Window
  /** 1 for the first of its sort: among mandatory stops of its scope, or among all visits. */
  readonly ordinal: number
}

/**
 * In the order of the log. A visit is a mandatory stop where the plan says so, where its first moment lies in
 * a window nobody served yet, or, where the rules name no windows, as long as stops are still owed. A visit
 * the plan has as something else is none. A run whose laps do not count leaves no visits.
 */
export function visitsOf(state: State, now: number): readonly Visit[] {
  const regulations = inForce(state, 'rules', now)
  const judge = { state, plan: planInForce(state, now), windows: windowsOf(regulations) }
  const owed = owedStops(regulations)
  const visits: Visit[] = []
  for (const stop of state.car.stops) {
    if (!isOfRunThatCounts(state, stop)) continue
    const scope =
      owed?.per === 'race' ? visits : visits.filter((v) => v.stop.segment === stop.segment)
    const before = scope.filter((visit) => visit.mandatory).length
    const serves = windowFor(judge, stop, visits)
    const meant = meantAs(judge.plan, stop)
    const owes =
      judge.windows.length === 0 && stop.segment !== undefined && before < (owed?.count ?? 0)
    const mandatory = meant ?? (serves !== undefined || owes)
    const ordinal = mandatory ? before + 1 : visits.length + 1
    visits.push({ stop, mandatory, ...(mandatory && serves ? { serves } : {}), ordinal })
  }
  return visits
}

function isOfRunThatCounts(state: State, stop: StopState): boolean {
  const run = stop.segment === undefined ? undefined : runAt(state, stop.segment, cameInAt(stop))
  return !run || countsOf(state, run).laps
}

export function windowsOf(regulations: Regulations | undefined): Windows {
  return known(ruleValue(regulations?.rules ?? [], 'stopWindows')?.windows) ?? []
}

/** How many stops the organiser demands, where that is known. */
export function owedStops(
  regulations: Regulations | undefined,
): { readonly count: number; readonly per: 'segment' | 'race' } | undefined {
  const rule = ruleValue(regulations?.rules ?? [], 'mandatoryStops')
  const count = known(rule?.count)
  return rule && count !== undefined ? { count, per: rule.per } : undefined
}

/** When the first moment of a visit was. */
export function cameInAt(stop: StopState): number {
  const times = Object.values(stop.moments).map((moment) => moment.at)
  return Math.min(...times)
}

interface Judge {
  readonly state: State
  readonly plan: Plan | undefined
  readonly windows: Windows
}

function windowFor(judge: Judge, stop: StopState, before: readonly Visit[]): Window | undefined {
  const at = cameInAt(stop)
  const run = judge.state.raceControl.runs.find(
    ({ segment, greenAt, endAt }) =>
      segment === stop.segment && greenAt <= at && at <= (endAt ?? at),
  )
  if (!run) return undefined
  const { clockMs } = clockAt(run, at)
  return firstToClose(
    judge.windows.filter(
      (window) =>
        window.segment === stop.segment &&
        window.fromMs <= clockMs &&
        clockMs <= window.toMs &&
        !before.some((visit) => visit.serves?.id === window.id),
    ),
  )
}

/** What the plan has this visit as; undefined where it was not planned. */
function meantAs(plan: Plan | undefined, stop: StopState): boolean | undefined {
  return plan?.stops.find((line) => line.id === stop.planned)?.mandatory
}
