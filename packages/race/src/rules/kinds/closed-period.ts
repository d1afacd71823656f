import { asked, choice, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** No stop counts at the beginning or the end. */
export const closedPeriod = ruleKind('closedPeriod', {
  of: choice('segment', 'race'),
  firstMs: maybe(asked(duration)),
  lastMs: maybe(asked(duration)),
})
