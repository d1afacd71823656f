import { asked, choice, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How often the driver changes, or how many stints there are, in the whole race. */
export const numberOfChanges = ruleKind('numberOfChanges', {
  of: choice('changes', 'stints'),
  atLeast: maybe(asked(count)),
  atMost: maybe(asked(count)),
})
