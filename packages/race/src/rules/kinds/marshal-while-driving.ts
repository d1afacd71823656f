import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether somebody at the controller may be counted as a marshal. */
export const marshalWhileDriving = ruleKind('marshalWhileDriving', { allowed: asked(yesNo) })
