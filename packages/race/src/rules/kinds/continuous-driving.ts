import { asked, category, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Length of one stint. */
export const continuousDriving = ruleKind('continuousDriving', {
  who: maybe(category),
  atLeastMs: maybe(asked(duration)),
  atMostMs: maybe(asked(duration)),
})
