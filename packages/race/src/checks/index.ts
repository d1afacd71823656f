/** The check of every kind of rule. A kind without one, or without a reason for none, does not compile. */
import type { RuleKind } from '../rules/index.ts'
import type { Check, NotChecked } from './case.ts'
import { DRIVING_CHECKS } from './driving/index.ts'
import { MARSHAL_CHECKS } from './marshals/index.ts'
import { NOT_CHECKED } from './not-checked.ts'
import { STOP_CHECKS } from './stops/index.ts'

export const CHECKS: { readonly [K in RuleKind]: Check<K> | NotChecked } = {
  ...DRIVING_CHECKS,
  ...STOP_CHECKS,
  ...MARSHAL_CHECKS,
  ...NOT_CHECKED,
}
