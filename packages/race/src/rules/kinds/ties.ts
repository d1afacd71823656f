import { asked, choices } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How ties are broken, in order. */
export const ties = ruleKind('ties', {
  order: asked(choices('runOff', 'bestLap', 'bestSegment', 'countBack', 'scrutineeringOrder')),
})
