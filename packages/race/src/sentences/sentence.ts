/**
 * How a kind of rule reads. `{part}` stands for a value, `[ … {part} … ]` for words that are there with their part
 * only. `words` are what choices read as, `asks` the questions for the briefing, `start` the value of a fresh rule.
 */
import type { RuleKind, RuleValue } from '../rules/index.ts'

export const GROUPS = {
  programme: 'Programme and lanes',
  driving: 'Driving',
  stops: 'Stops',
  work: 'Work on the car',
  allowances: 'Allowances',
  marshals: 'Marshals',
  repairs: 'Must stay on the car, must work',
  clocks: 'Clocks',
  result: 'Result',
  penalties: 'Penalties',
} as const
export type Group = keyof typeof GROUPS

type PartOf<K extends RuleKind> = Extract<keyof RuleValue<K>, string>

export interface Sentence<K extends RuleKind = RuleKind> {
  readonly group: Group
  readonly called: string
  readonly reads: string
  readonly words?: { readonly [P in PartOf<K>]?: Readonly<Record<string, string>> }
  readonly asks?: { readonly [P in PartOf<K>]?: string }
  readonly start: RuleValue<K>
}
