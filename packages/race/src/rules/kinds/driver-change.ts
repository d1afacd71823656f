import { asked, choice } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Where drivers change, and in which order. */
export const driverChange = ruleKind('driverChange', {
  where: asked(choice('stoppedInPitLane', 'anywhere')),
  order: asked(choice('downFirst', 'anyOrder')),
})
