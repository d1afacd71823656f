import { asked, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Length of a shift at a post and rest between two. */
export const marshalShift = ruleKind('marshalShift', {
  atMostMs: maybe(asked(duration)),
  restMs: maybe(asked(duration)),
})
