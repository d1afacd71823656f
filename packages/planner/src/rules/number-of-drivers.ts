import type { Term } from '../linear/model.ts'
import type { RuleKind } from './rule-kind.ts'

/** How many people drive in the race. */
export interface NumberOfDrivers {
  readonly id: string
  readonly kind: 'numberOfDrivers'
  readonly atLeast?: number
  readonly atMost?: number
}

export const numberOfDrivers: RuleKind<NumberOfDrivers> = {
  rows: ({ id: tag, atLeast, atMost }, rotation) => {
    if (rotation.allDrive && (atLeast ?? 0) >= rotation.grid.drivers.length) {
      for (const { id } of rotation.grid.drivers) {
        const stints = rotation.stintsOf(id).map(({ column }): Term => [column, 1])
        rotation.row(stints, { atLeast: 1, tag })
      }
    }
    const all = rotation.grid.drivers.map((person): Term => [rotation.drives(person), 1])
    rotation.row(all, { ...(atLeast && { atLeast }), ...(atMost !== undefined && { atMost }), tag })
  },
}
