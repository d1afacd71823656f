import { asked, choice, count, maybe, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Whether hands may work on the car in one phase, and what it costs where it is paid for in laps. */
export const workAllowed = ruleKind('workAllowed', {
  during: choice('green', 'trackCall', 'redFlag', 'laneChange', 'break', 'parcFerme'),
  allowed: asked(yesNo),
  costLaps: maybe(count),
})
