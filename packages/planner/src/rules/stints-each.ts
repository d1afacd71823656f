import { isOf } from '../grid/grid.ts'
import type { Term } from '../linear/model.ts'
import { leastAndMost } from './least-and-most.ts'
import type { RuleKind } from './rule-kind.ts'

/** Number of stints of each who drives. */
export interface StintsEach {
  readonly id: string
  readonly kind: 'stintsEach'
  readonly who?: string
  readonly atLeast?: number
  readonly atMost?: number
}

export const stintsEach: RuleKind<StintsEach> = {
  rows: ({ id, who, atLeast, atMost }, rotation) => {
    for (const person of rotation.grid.drivers.filter((one) => isOf(one, who))) {
      const value = rotation.stintsOf(person.id).map(({ column }): Term => [column, 1])
      leastAndMost(rotation, { person, value, atLeast, atMost, tag: id })
    }
  },
}
