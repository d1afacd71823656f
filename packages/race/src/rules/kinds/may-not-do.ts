import { category, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** A category of people kept from a duty. */
export const mayNotDo = ruleKind('mayNotDo', {
  who: category,
  duty: choice('controller', 'post', 'wall', 'bench'),
})
