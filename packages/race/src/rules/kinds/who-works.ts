import { asked, choice, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whose hands may work on the car. */
export const whoWorks = ruleKind('whoWorks', {
  who: asked(choice('anybody', 'crew', 'driver', 'judges')),
  atMost: maybe(asked(count)),
})
