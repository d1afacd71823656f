import { asked, choice, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What the result is made of. */
export const scoring = ruleKind('scoring', {
  by: asked(choice('laps', 'lapsAndSections')),
  sections: maybe(asked(choice('carriedOn', 'added', 'dropped'))),
})
