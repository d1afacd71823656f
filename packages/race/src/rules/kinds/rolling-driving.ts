import { asked, category, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** At most so much driving in any window of a length, at every instant. */
export const rollingDriving = ruleKind('rollingDriving', {
  who: maybe(category),
  atMostMs: asked(duration),
  withinMs: asked(duration),
})
