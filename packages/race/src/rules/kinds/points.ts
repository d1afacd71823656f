import { asked, choice, counts } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Points by place. */
export const points = ruleKind('points', { per: choice('segment', 'stage'), table: asked(counts) })
