import { asked, duration } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Running between two stops. */
export const runningBetweenStops = ruleKind('runningBetweenStops', { atLeastMs: asked(duration) })
