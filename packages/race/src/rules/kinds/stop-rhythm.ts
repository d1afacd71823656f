import { asked, duration } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** One stop at every multiple of a time on the race clock, within a tolerance; segments follow each other without their breaks. */
export const stopRhythm = ruleKind('stopRhythm', {
  everyMs: asked(duration),
  toleranceMs: asked(duration),
})
