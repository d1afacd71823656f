import { asked, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How long the break between two lanes is. */
export const laneChange = ruleKind('laneChange', {
  lengthMs: asked(duration),
  earliestMs: maybe(asked(duration)),
})
