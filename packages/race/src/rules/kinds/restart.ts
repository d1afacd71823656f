import { asked, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Where the car stands when the next segment goes green. */
export const restart = ruleKind('restart', {
  at: asked(choice('sameSection', 'straightAcross', 'startLine')),
})
