/** Open faults that a rule wants mended: within which limit, what it costs beyond, and whether a choice is left. */
import { inForce } from '../fold/in-force.ts'
import type { FaultState, State } from '../fold/state.ts'
import { rulesOf, type RuleOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { darknessOf } from '../time/darkness.ts'
import { lappingMs } from '../time/lapping.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'
import { paceNow } from './pace.ts'
import { repairLimits, type RepairLimit } from './repair-limits.ts'
import { repairOpportunityAt } from './repair-opportunity.ts'

type Rule = RuleOf<'compulsoryRepair'>

export interface CompulsoryRepair {
  readonly fault: FaultState
  /** The rule's line, and what it calls the fault. */
  readonly rule: string
  readonly what: string
  readonly clause?: string
  /** Why the milder limit holds; absent where the usual one does. */
  readonly because?: 'firstTime' | 'causedByOthers'
  /** Every limit the rule sets, the soonest first; those without a time last. */
  readonly limits: readonly RepairLimit[]
  /** The one that ends first; absent where the rule sets none, or not yet. */
  readonly limit?: RepairLimit
  readonly over: boolean
  /** The rule leaves none: at once, over, or over before the next stop or lane change at which it can be done. */
  readonly noChoice: boolean | 'notKnown'
  /** About when that is. */
  readonly opportunityAt?: number
  readonly onlyUnderGreen: boolean | 'notKnown'
  /** Whether anything else may be done at that stop. */
  readonly elseAtStop?: 'nothing' | 'anything' | 'notKnown'
  /** For each lap beyond the limit. */
  readonly costLaps?: number | 'notKnown'
  /** Whole laps since the limit, where it is over and a pace is known: an estimate. */
  readonly beyond?: { readonly laps: number; readonly costLaps?: number; readonly estimated: true }
}

/**
 * Open faults whose name is the `what` of a rule in force, capitals aside; soonest first, of each fault the first
 * rule that names it. A first fault of its name has the milder limit where the rules have one, and so has one that
 * a marshal or another car caused where it counts as a first; it is a first one all the same, and the next of ours
 * has the usual limit: the reading that cannot cost a penalty. A rule for dark segments alone sets its limit while
 * one runs, from its green, and by the lane change before one.
 */
export function compulsoryRepairs(state: State, now: number): readonly CompulsoryRepair[] {
  const rules = rulesOf(inForce(state, 'rules', now)?.rules ?? [], 'compulsoryRepair')
  const repairs = state.car.faults.flatMap((fault): readonly CompulsoryRepair[] => {
    if (fault.ended) return []
    const rule = rules.find(({ value }) => isSame(value.what, fault.fault))
    return rule ? [repairOf(state, { fault, rule, now })] : []
  })
  return repairs.sort((a, b) => (a.limit?.dueAt ?? Infinity) - (b.limit?.dueAt ?? Infinity))
}

interface Asked {
  readonly fault: FaultState
  readonly rule: Rule
  readonly now: number
}

function repairOf(state: State, { fault, rule, now }: Asked): CompulsoryRepair {
  const { id, clause, value } = rule
  const because = milderBecause(state, fault, rule)
  const dark = known(value.when) === 'darkSegments' ? inTheDark(state, now) : undefined
  const usual = because || dark?.is === 'soon' ? LANE_CHANGE : value
  const since = Math.max(fault.notedAt, dark?.since ?? fault.notedAt)
  const limits =
    dark?.is === 'no'
      ? []
      : repairLimits(state, { fault: { ...fault, notedAt: since }, value: usual, now })
  const [limit] = limits
  const onlyUnderGreen = known(value.underGreen) ?? 'notKnown'
  const opportunityAt = repairOpportunityAt(state, now, { onlyUnderGreen })
  const over = limits.some((one) => one.over)
  return {
    fault,
    ...{ rule: id, what: value.what, limits, over, onlyUnderGreen },
    ...(clause === undefined ? {} : { clause }),
    ...(because ? { because } : {}),
    ...(limit ? { limit } : {}),
    noChoice: over || leavesNone(limit, opportunityAt),
    ...(opportunityAt === undefined ? {} : { opportunityAt }),
    ...(value.elseAtStop ? { elseAtStop: known(value.elseAtStop) ?? 'notKnown' } : {}),
    ...(value.costLaps === undefined ? {} : { costLaps: known(value.costLaps) ?? 'notKnown' }),
    ...beyond(state, { limit, costLaps: known(value.costLaps), now }),
  }
}

const LANE_CHANGE = { until: 'laneChange' } as const

interface InTheDark {
  readonly is: 'now' | 'soon' | 'no'
  /** The green of the dark segment that runs, or of the one before it: lane changes that came earlier do not count. */
  readonly since?: number
}

/** Whether a segment runs in the dark, or the next one will; what is only partly dark is dark. */
function inTheDark(state: State, now: number): InTheDark {
  const segments = segmentsOf(state, now)
  const isDark = (one: SegmentOutlook | undefined) =>
    one !== undefined && ['dark', 'partly'].includes(darknessOf(state, one, now).is)
  const running = segments.find((one) => one.state === 'running')
  if (isDark(running)) return { is: 'now', since: running?.startsAt }
  if (!isDark(segments.find((one) => one.state === 'ahead'))) return { is: 'no' }
  return { is: 'soon', since: state.raceControl.runs.at(-1)?.greenAt }
}

function milderBecause(
  state: State,
  fault: FaultState,
  { value }: Rule,
): CompulsoryRepair['because'] {
  if (known(value.firstTime) !== 'laneChange') return undefined
  const isFirst = !state.car.faults.some(
    (other) => other.notedAt < fault.notedAt && isSame(other.fault, fault.fault),
  )
  if (isFirst) return 'firstTime'
  const byOthers = fault.causedBy === 'marshal' || fault.causedBy === 'otherCar'
  return byOthers && known(value.causedByOthers) === 'asFirst' ? 'causedByOthers' : undefined
}

function leavesNone(
  limit: RepairLimit | undefined,
  opportunityAt: number | undefined,
): boolean | 'notKnown' {
  if (limit?.dueAt === undefined) return 'notKnown'
  return limit.dueAt < (opportunityAt ?? Infinity)
}

interface Beyond {
  readonly limit: RepairLimit | undefined
  readonly costLaps: number | undefined
  readonly now: number
}

/** A limit in laps or time has gone below nothing by its own clock; after the others laps are counted as they run. */
function beyond(state: State, { limit, costLaps, now }: Beyond): Pick<CompulsoryRepair, 'beyond'> {
  const paceMs = paceNow(state, now)
  const { by, over, remainingMs = 0, dueAt = now } = limit ?? {}
  if (!over || paceMs === undefined) return {}
  const isCounted = by === 'laps' || by === 'time'
  const beyondMs = isCounted ? -remainingMs : lappingMs(state, { fromAt: dueAt, toAt: now })
  const laps = Math.floor(beyondMs / paceMs)
  const cost = costLaps === undefined ? {} : { costLaps: laps * costLaps }
  return { beyond: { laps, ...cost, estimated: true } }
}

function isSame(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase()
}
