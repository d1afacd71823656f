import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What a track call does to a stop. */
export const trackCallStop = ruleKind('trackCallStop', {
  mayLeave: asked(yesNo),
  windowExtended: asked(yesNo),
})
