import { asked, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How the first lane is found. */
export const startingLane = ruleKind('startingLane', {
  by: asked(choice('draw', 'qualifying', 'choice')),
})
