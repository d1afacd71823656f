import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether passing through the pit lane counts a lap. */
export const pitLaneLap = ruleKind('pitLaneLap', { counts: asked(yesNo) })
