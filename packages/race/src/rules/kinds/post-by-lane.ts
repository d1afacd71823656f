import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether the team’s post is that of its lane. */
export const postByLane = ruleKind('postByLane', { tied: asked(yesNo) })
