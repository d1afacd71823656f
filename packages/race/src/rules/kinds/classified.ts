import { asked, share } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Least share of the winner’s laps to be classified. */
export const classified = ruleKind('classified', { atLeast: asked(share) })
