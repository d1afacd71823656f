import { asked, choice, duration, maybe, share } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** The same for every driver of the crew, within a tolerance of the equal share. */
export const equalShare = ruleKind('equalShare', {
  of: choice('time', 'segments'),
  tolerance: maybe(asked(share)),
  toleranceMs: maybe(asked(duration)),
})
