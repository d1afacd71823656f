import { asked, choice, seconds } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How long a mandatory stop lasts at least, and between which two of its four moments. */
export const stopMinimum = ruleKind('stopMinimum', {
  minimumMs: asked(seconds),
  from: asked(choice('pitEntry', 'stopped')),
  to: asked(choice('leaving', 'pitExit')),
})
