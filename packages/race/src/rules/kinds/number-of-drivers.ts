import { asked, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** How many people of the crew drive in the race. */
export const numberOfDrivers = ruleKind('numberOfDrivers', {
  atLeast: maybe(asked(count)),
  atMost: maybe(asked(count)),
})
