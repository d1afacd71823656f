import { asked, category, choice, clockTime, duration, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** One unbroken rest for everybody in the whole race, within hours of the clock where they are named. */
export const restBlock = ruleKind('restBlock', {
  who: maybe(category),
  atLeastMs: asked(duration),
  from: maybe(asked(clockTime)),
  to: maybe(asked(clockTime)),
  marshalling: asked(choice('isRest', 'isNotRest')),
})
