import { asked, choice, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How soon a penalty in the pit lane is served. */
export const servePenalty = ruleKind('servePenalty', {
  penalty: choice('driveThrough', 'stopAndGo'),
  withinLaps: asked(count),
})
