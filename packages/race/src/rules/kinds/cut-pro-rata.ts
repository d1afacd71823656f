import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether limits of driving time are cut in proportion when the race is shortened. */
export const cutProRata = ruleKind('cutProRata', { cut: asked(yesNo) })
