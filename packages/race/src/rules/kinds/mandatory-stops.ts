import { asked, choice, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How many stops the organiser demands. */
export const mandatoryStops = ruleKind('mandatoryStops', {
  count: asked(count),
  per: choice('segment', 'race'),
})
