import { isOf } from '../grid/grid.ts'
import type { Duty } from '../problem/problem.ts'
import type { RuleKind } from './rule-kind.ts'

/** Who is kept from a duty: a category, one person, or everybody; in the named segments or in all. */
export interface MayNot {
  readonly id: string
  readonly kind: 'mayNot'
  readonly who?: string
  readonly person?: string
  readonly duty: Duty
  readonly segments?: readonly string[]
}

export const mayNot: RuleKind<MayNot> = {
  bars: ({ who, person, duty, segments }, grid) => {
    const isIn = (id: string) => segments === undefined || segments.includes(id)
    return {
      duty: (one) =>
        one.duty === duty &&
        isIn(one.slot.segment.id) &&
        isOf(one.person, who) &&
        (person === undefined || one.person.id === person),
      stint: (stint) =>
        duty === 'controller' &&
        isOf(stint.person, who) &&
        (person === undefined || stint.person.id === person) &&
        grid.slots
          .slice(stint.from, stint.to)
          .some((slot) => !slot.isPast && isIn(slot.segment.id)),
    }
  },
}
