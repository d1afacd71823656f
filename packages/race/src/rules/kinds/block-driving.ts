import { asked, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Driving within fixed blocks of the race clock, counted from the first green. */
export const blockDriving = ruleKind('blockDriving', {
  blockMs: asked(duration),
  atLeastMs: maybe(asked(duration)),
  atMostMs: maybe(asked(duration)),
})
