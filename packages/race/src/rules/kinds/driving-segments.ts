import { asked, category, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Number of segments in which a driver has the controller. */
export const drivingSegments = ruleKind('drivingSegments', {
  who: maybe(category),
  atLeast: maybe(asked(count)),
  atMost: maybe(asked(count)),
})
