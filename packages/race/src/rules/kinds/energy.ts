import { asked, choice, count, duration, maybe, seconds, share } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What the simulated tank or charge of a digital car allows. */
export const energy = ruleKind('energy', {
  fullLaps: maybe(asked(count)),
  fullMs: maybe(asked(duration)),
  fillMs: maybe(asked(seconds)),
  leftAtEnd: maybe(asked(share)),
  atEmpty: asked(choice('stands', 'slows', 'penalty')),
})
