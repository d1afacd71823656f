import { asked, choice, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Counted permission, those fitted at the start included; each further one costs laps or is not allowed. */
export const allowance = ruleKind('allowance', {
  of: choice('tyreSets', 'motors', 'bodies', 'chassis', 'cars'),
  count: asked(count),
  when: asked(choice('freely', 'onFailure')),
  handling: maybe(asked(choice('marked', 'lodged', 'drawn'))),
  costLaps: maybe(asked(count)),
})
