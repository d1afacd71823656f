/**
 * Rules and a timeline → findings. The same checks judge a plan made by hand, one worked out, and the race as
 * it runs.
 */
import type { Rule, RuleKind } from '../rules/index.ts'
import { ALWAYS } from './always/index.ts'
import { benchOf, type Bench, type Judged } from './bench.ts'
import type { Axis, Case, Check, Limit, NotChecked } from './case.ts'
import { CHECKS } from './index.ts'

export interface Finding {
  /** The rule's line and the limit within it, or the name of what always holds. */
  readonly id: string
  readonly rule?: string
  readonly kind?: RuleKind
  readonly clause?: string
  readonly axis: Axis
  /** As a row of a table reads it. */
  readonly called: string
  /** `open`: not reached yet, and there is still time for it. */
  readonly verdict: 'kept' | 'broken' | 'open'
  readonly unit: Case['unit']
  readonly sense: Case['sense']
  readonly limit: number
  readonly value: number
  /** By how much it is kept; below 0 where it is broken. In the unit of limit and value. */
  readonly margin: number
  readonly people: readonly string[]
  readonly spans: readonly string[]
  readonly stops: readonly string[]
  readonly sentence: string
}

/** Only what is decided from `fromAt` to before `toAt` is judged; what concerns the whole race where `isLast`. */
export interface InForce {
  readonly fromAt: number
  readonly toAt: number
  readonly isLast: boolean
}

const ALWAYS_IN_FORCE: InForce = { fromAt: -Infinity, toAt: Infinity, isLast: true }

/**
 * For each limit that anything can be held against: every case that breaks it, or else the one that comes
 * closest. What always holds comes first and is said only where it is broken; then rules in the organiser's order.
 */
export function findings(judged: Judged, inForce: InForce = ALWAYS_IN_FORCE): readonly Finding[] {
  const bench = benchOf(judged)
  const found: Finding[] = []
  for (const [name, check] of Object.entries(ALWAYS)) {
    const about = { id: name, axis: check.axis }
    for (const limit of check.limits(bench)) {
      found.push(...decide(about, { limit, bench, inForce }).filter(isBroken))
    }
  }
  for (const rule of judged.regulations.rules) {
    const check = checkOf(rule)
    if ('notChecked' in check) continue
    const about = {
      ...{ id: rule.id, rule: rule.id, kind: rule.kind, axis: check.axis },
      ...(rule.clause === undefined ? {} : { clause: rule.clause }),
    }
    for (const limit of check.limits(rule.value, bench)) {
      found.push(...decide(about, { limit, bench, inForce }))
    }
  }
  return found
}

function isBroken({ verdict }: Finding): boolean {
  return verdict === 'broken'
}

/** A rule and its check are of one kind, which the table holds and the compiler cannot follow. */
function checkOf(rule: Rule): Check | NotChecked {
  return CHECKS[rule.kind] as Check | NotChecked
}

type About = Pick<Finding, 'id' | 'rule' | 'kind' | 'clause' | 'axis'>

interface ToDecide {
  readonly limit: Limit
  readonly bench: Bench
  readonly inForce: InForce
}

function decide(about: About, { limit, bench, inForce }: ToDecide): readonly Finding[] {
  const broken: Case[] = []
  let closest: Case | undefined
  let least = Infinity
  for (const one of limit.cases) {
    if (!isJudged(one, inForce)) continue
    const margin = marginOf(one)
    if (margin < 0) broken.push(one)
    if (margin < least) closest = one
    least = Math.min(least, margin)
  }
  const said = broken.length > 0 ? broken : closest ? [closest] : []
  const { id: _id, ...of } = about
  return said.map((one) => ({
    id: `${about.id}:${limit.name}`,
    called: limit.called,
    verdict: verdictOf(one, bench.timeline.isWhole),
    ...{ unit: one.unit, sense: one.sense, limit: one.limit, value: one.value },
    margin: marginOf(one),
    ...{ people: one.people ?? [], spans: one.spans ?? [], stops: one.stops ?? [] },
    sentence: one.says(),
    ...of,
  }))
}

function isJudged({ at }: Case, { fromAt, toAt, isLast }: InForce): boolean {
  return at === undefined ? isLast : at >= fromAt && at < toAt
}

function marginOf({ sense, limit, value }: Case): number {
  return sense === 'atLeast' ? value - limit : limit - value
}

function verdictOf(one: Case, isWhole: boolean): Finding['verdict'] {
  if (marginOf(one) >= 0) return 'kept'
  return one.untilTheEnd && !isWhole ? 'open' : 'broken'
}
