import { asked, choice, maybe, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether time with the car not running counts for the driver, and who answers for the car meanwhile. */
export const countsAsDriving = ruleKind('countsAsDriving', {
  what: choice('stops', 'repair', 'waitingForRepair'),
  counts: asked(yesNo),
  inControl: maybe(asked(choice('lastDriver', 'nextDriver', 'nobody'))),
})
