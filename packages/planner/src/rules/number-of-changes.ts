import { times, type Term } from '../linear/model.ts'
import type { Rotation } from '../rotation/rotation.ts'
import { comes, leaves, turnsOf } from '../rotation/turns.ts'
import type { RuleKind } from './rule-kind.ts'

/** Of the whole race. Whoever is at the controller again after a break has not changed. */
export interface NumberOfChanges {
  readonly id: string
  readonly kind: 'numberOfChanges'
  readonly of: 'changes' | 'stints'
  readonly atLeast?: number
  readonly atMost?: number
}

export const numberOfChanges: RuleKind<NumberOfChanges> = {
  rows: ({ id: tag, of, atLeast, atMost }, rotation) => {
    const stints = rotation.stints.map(({ column }): Term => [column, 1])
    const same = of === 'changes' ? times(sameAgain(rotation, tag), -1) : []
    // One fewer change than stints.
    const more = of === 'changes' ? 1 : 0
    rotation.row([...stints, ...same], {
      ...(atLeast === undefined ? {} : { atLeast: atLeast + more }),
      ...(atMost === undefined ? {} : { atMost: atMost + more }),
      tag,
    })
  },
}

/** For each break and person whether they drive on both sides of it. */
function sameAgain(rotation: Rotation, tag: string): readonly Term[] {
  const { grid, model } = rotation
  return turnsOf(rotation)
    .filter(({ isBreak }) => isBreak)
    .flatMap((turn) =>
      grid.drivers.flatMap(({ id }): Term[] => {
        const [left, came] = [leaves(rotation, id, turn), comes(rotation, id, turn)]
        if (left.length === 0 || came.length === 0) return []
        const both = model.part()
        model.row([[both, 1], ...times(left, -1)], { atMost: 0, tag })
        model.row([[both, 1], ...times(came, -1)], { atMost: 0, tag })
        model.row([[both, 1], ...times(left, -1), ...times(came, -1)], { atLeast: -1, tag })
        return [[both, 1]]
      }),
    )
}
