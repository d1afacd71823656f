import { asked, choice, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How many marshals the team puts up, and when. */
export const marshalsOwed = ruleKind('marshalsOwed', {
  count: asked(count),
  when: asked(choice('wholeRace', 'sitOuts')),
})
