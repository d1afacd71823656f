import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether the driver changes at every mandatory stop. */
export const changeAtStop = ruleKind('changeAtStop', { changes: asked(yesNo) })
