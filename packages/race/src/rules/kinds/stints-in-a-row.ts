import { asked, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How often a driver may change with themselves. */
export const stintsInARow = ruleKind('stintsInARow', { atMost: asked(count) })
