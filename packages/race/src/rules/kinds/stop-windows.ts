import { asked, windows } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** When mandatory stops may be taken, on each segment’s race clock. */
export const stopWindows = ruleKind('stopWindows', { windows: asked(windows) })
