import { asked, category, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Number of stints of one driver. */
export const stintsEach = ruleKind('stintsEach', {
  who: maybe(category),
  atLeast: maybe(asked(count)),
  atMost: maybe(asked(count)),
})
