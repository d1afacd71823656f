import { asked, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Laps from one driver change to the next. */
export const lapsBetweenChanges = ruleKind('lapsBetweenChanges', { atLeast: asked(count) })
