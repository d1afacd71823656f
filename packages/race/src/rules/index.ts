/** Every kind of rule this build can say, one file each. */
import * as z from 'zod/mini'
import { clockPolicy } from './clock-policy.ts'
import { mandatoryStops, stopMinimum } from './mandatory-stops.ts'
import { stopWindows } from './stop-windows.ts'
import { workAllowed } from './work-allowed.ts'

export const ruleSchema = z.discriminatedUnion('kind', [
  mandatoryStops,
  stopMinimum,
  stopWindows,
  clockPolicy,
  workAllowed,
])
export type Rule = z.infer<typeof ruleSchema>
export type RuleKind = Rule['kind']
export type RuleOf<K extends RuleKind> = Extract<Rule, { kind: K }>
export type RuleValue<K extends RuleKind> = RuleOf<K>['value']

/** All rules of one kind, in the organiser's order. */
export function rulesOf<K extends RuleKind>(rules: readonly Rule[], kind: K): readonly RuleOf<K>[] {
  return rules.filter((rule): rule is RuleOf<K> => rule.kind === kind)
}

/** The value of the first rule of this kind; undefined where it is absent. */
export function ruleValue<K extends RuleKind>(
  rules: readonly Rule[],
  kind: K,
): RuleValue<K> | undefined {
  return rulesOf(rules, kind)[0]?.value as RuleValue<K> | undefined
}
