import { asked, duration } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** The largest difference of driving time between two drivers. */
export const drivingSpread = ruleKind('drivingSpread', { atMostMs: asked(duration) })
