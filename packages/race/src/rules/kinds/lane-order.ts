import { asked, choice, counts, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** In which order a car moves over the lanes. */
export const laneOrder = ruleKind('laneOrder', {
  moves: asked(choice('oddUpEvenDown', 'sequence', 'groups')),
  sequence: maybe(counts),
})
