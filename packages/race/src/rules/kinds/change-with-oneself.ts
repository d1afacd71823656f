import { asked, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether a change with oneself begins a new stint. */
export const changeWithOneself = ruleKind('changeWithOneself', { begins: asked(yesNo) })
