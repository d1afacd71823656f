import { asked, choice, count, counts, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/**
 * In which order a car moves over the lanes. In a sequence 0 is a segment sat out; with `sitOutsAfter` one is sat
 * out after each of these lanes. Of several groups each runs in turn, and the others sit out.
 */
export const laneOrder = ruleKind('laneOrder', {
  moves: asked(choice('oddUpEvenDown', 'sequence', 'groups')),
  sequence: maybe(counts),
  sitOutsAfter: maybe(asked(counts)),
  groups: maybe(asked(count)),
})
