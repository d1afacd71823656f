import { asked, choice, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How long the break between two lanes is, how soon it may end, and who moves the car. */
export const laneChange = ruleKind('laneChange', {
  lengthMs: asked(duration),
  earliestMs: maybe(asked(duration)),
  movedBy: maybe(asked(choice('us', 'judges'))),
})
