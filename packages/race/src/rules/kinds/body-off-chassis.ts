import { asked, choice, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Repairs that separate body and chassis. */
export const bodyOffChassis = ruleKind('bodyOffChassis', {
  allowed: asked(choice('anywhere', 'bench', 'never')),
  costLaps: maybe(asked(count)),
})
