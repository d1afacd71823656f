/** Counted permissions: how many are used, how many are left, what the next one costs. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { rulesOf, type RuleOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'

type Value = RuleOf<'allowance'>['value']

export interface AllowanceNow {
  readonly rule: string
  readonly clause?: string
  readonly of: Value['of']
  /** Those fitted at the start included. Absent while it is not known. */
  readonly count?: number
  readonly used: number
  /** Never below 0. */
  readonly left?: number
  /** How many more were used than are allowed; 0 while the count is not known. */
  readonly beyond: number
  /** Nothing while some are left; beyond them laps, where the rules sell further ones. */
  readonly nextCosts: { readonly laps: number } | 'notAllowed' | 'notKnown'
  readonly onlyOnFailure: boolean | 'notKnown'
  readonly handling?: 'marked' | 'lodged' | 'drawn' | 'notKnown'
}

/**
 * One for each rule in force, in the organiser's order. One is on the car at the start whether or not it was
 * recorded, and those recorded before the first green count once a position. After it each one fitted counts, and
 * so does one fitted again: the reading that cannot cost a penalty.
 */
export function allowances(state: State, now: number): readonly AllowanceNow[] {
  return rulesOf(inForce(state, 'rules', now)?.rules ?? [], 'allowance').map((rule) => {
    const { of, when, handling } = rule.value
    const count = known(rule.value.count)
    const used = usedOf(state, of)
    return {
      ...{ rule: rule.id, of, used, nextCosts: nextCosts(rule.value, used) },
      ...(rule.clause === undefined ? {} : { clause: rule.clause }),
      ...(count === undefined ? {} : { count, left: Math.max(0, count - used) }),
      beyond: Math.max(0, used - (count ?? used)),
      onlyOnFailure: when === 'notKnownYet' ? 'notKnown' : when === 'onFailure',
      ...(handling === undefined ? {} : { handling: known(handling) ?? 'notKnown' }),
    }
  })
}

function nextCosts({ count, costLaps }: Value, used: number): AllowanceNow['nextCosts'] {
  if (count === 'notKnownYet') return 'notKnown'
  if (used < count) return { laps: 0 }
  if (costLaps === 'notKnownYet') return 'notKnown'
  return costLaps === undefined ? 'notAllowed' : { laps: costLaps }
}

function usedOf(state: State, of: Value['of']): number {
  const startedAt = state.raceControl.runs[0]?.greenAt ?? Infinity
  if (of === 'cars') return 1 + state.car.exchanges.filter(({ at }) => at >= startedAt).length
  let since = 0
  const atStart = new Set<string>()
  for (const { at, body } of state.car.parts) {
    if (!('allowance' in body) || body.allowance?.toLowerCase() !== of.toLowerCase()) continue
    if (at >= startedAt) since += 1
    else atStart.add(body.position.toLowerCase())
  }
  return Math.max(1, atStart.size) + since
}
