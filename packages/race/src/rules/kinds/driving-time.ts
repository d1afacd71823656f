import { asked, category, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Time at the controller in the whole race, for each driver or for those of a category. */
export const drivingTime = ruleKind('drivingTime', {
  who: maybe(category),
  atLeastMs: maybe(asked(duration)),
  atMostMs: maybe(asked(duration)),
})
