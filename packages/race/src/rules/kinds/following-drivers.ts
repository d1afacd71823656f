import { asked, category, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Which categories of driver must or must not follow each other. */
export const followingDrivers = ruleKind('followingDrivers', {
  first: category,
  must: asked(choice('must', 'mustNot')),
  then: category,
})
