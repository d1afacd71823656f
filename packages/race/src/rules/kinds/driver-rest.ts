import { asked, category, choice, duration, maybe, share } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Time away from the controller between two stints, absolute or as a share of the stint before. */
export const driverRest = ruleKind('driverRest', {
  who: maybe(category),
  atLeastMs: maybe(asked(duration)),
  shareOfStint: maybe(asked(share)),
  marshalling: asked(choice('isRest', 'isNotRest')),
})
