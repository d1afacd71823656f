import { asked, duration, maybe, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether the relief is there before the marshal leaves. */
export const relief = ruleKind('relief', { before: asked(yesNo), byMs: maybe(asked(duration)) })
