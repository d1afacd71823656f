/** Rules of every kind as values, and how they are found. */
import * as z from 'zod/mini'
import { RULE_KINDS } from './kinds/index.ts'

type SchemasOf<T extends readonly { readonly schema: unknown }[]> = {
  readonly [I in keyof T]: T[I]['schema']
}

export const ruleSchema = z.discriminatedUnion(
  'kind',
  RULE_KINDS.map(({ schema }) => schema) as unknown as SchemasOf<typeof RULE_KINDS>,
)
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
  return rules.find((rule) => rule.kind === kind)?.value as RuleValue<K> | undefined
}
