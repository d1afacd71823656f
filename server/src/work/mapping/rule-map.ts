/** Every kind of rule. A kind without a row does not compile. */
import type { Rule as Planned } from '@pitlamp/planner'
import type { Rule, RuleKind } from '@pitlamp/race'
import { DRIVING } from './driving-rules.ts'
import type { Ground } from './ground.ts'
import type { Mapping, Mappings } from './mapping.ts'
import { MARSHALS } from './marshal-rules.ts'
import { NOT_PLANNED } from './not-planned.ts'
import { STOPS } from './stop-rules.ts'

export const RULE_MAP: Mappings<RuleKind> = { ...DRIVING, ...STOPS, ...MARSHALS, ...NOT_PLANNED }

export function plannedRules(ground: Ground): readonly Planned[] {
  return ground.regulations.rules.flatMap((rule) => {
    const mapping = mappingOf(rule)
    return 'rules' in mapping ? mapping.rules(rule, ground) : []
  })
}

/** A rule and its row are of one kind, which the table holds and the compiler cannot follow. */
function mappingOf(rule: Rule): Mapping {
  return RULE_MAP[rule.kind] as Mapping
}
