import { asked, category, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Who must or may not drive first or last. */
export const endDriver = ruleKind('endDriver', {
  which: choice('first', 'last'),
  who: category,
  may: asked(choice('must', 'mayNot')),
})
