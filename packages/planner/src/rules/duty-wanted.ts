import type { Duty } from '../problem/problem.ts'
import { isIn } from '../rotation/duties.ts'
import type { RuleKind } from './rule-kind.ts'

/** So many people on a duty in every slot, of the named segments or of all. */
export interface DutyWanted {
  readonly id: string
  readonly kind: 'dutyWanted'
  readonly duty: Exclude<Duty, 'controller'>
  readonly post?: string
  readonly count: number
  readonly segments?: readonly string[]
}

export const dutyWanted: RuleKind<DutyWanted> = {
  rows: (rule, rotation) => {
    const place = { duty: rule.duty, ...(rule.post === undefined ? {} : { post: rule.post }) }
    for (const slot of rotation.grid.slots) {
      if (slot.isPast || !isIn(rule, slot)) continue
      const held = rotation.grid.problem.people.flatMap(({ id }) =>
        rotation.heldAt(place, id, slot.index),
      )
      rotation.row(held, { atLeast: rule.count, tag: rule.id })
    }
  },
}
