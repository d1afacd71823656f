import { asked, category, duration, maybe, share } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Share of the race at the controller. Where the race is no longer than `longerThanMs` it does not apply. */
export const drivingShare = ruleKind('drivingShare', {
  who: maybe(category),
  atLeast: maybe(asked(share)),
  atMost: maybe(asked(share)),
  longerThanMs: maybe(duration),
})
