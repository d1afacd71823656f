import { CLOCKS, INTERRUPTIONS } from '../clocks.ts'
import { asked, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether one clock runs on or holds under one kind of interruption; only the minimum stop may start again. */
export const clockPolicy = ruleKind('clockPolicy', {
  clock: choice(...CLOCKS),
  under: choice(...INTERRUPTIONS),
  does: asked(choice('runs', 'holds', 'startsAgain')),
})
