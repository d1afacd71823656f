import { asked, clockTime } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Hours of the clock at the venue in which the hall is dark. */
export const darkHours = ruleKind('darkHours', { from: asked(clockTime), to: asked(clockTime) })
