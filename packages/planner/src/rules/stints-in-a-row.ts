import { times, type Term } from '../linear/model.ts'
import { mayFollowOneself } from '../rotation/driving.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { RuleKind } from './rule-kind.ts'

/**
 * Stints of one driver with nobody else's in between, over breaks too. In any stretch of slots, each slot somebody
 * else drives allows as many more beginnings as stints are allowed in a row; a stretch without one allows one fewer.
 */
export interface StintsInARow {
  readonly id: string
  readonly kind: 'stintsInARow'
  readonly atMost: number
}

export const stintsInARow: RuleKind<StintsInARow> = {
  rows: ({ id: tag, atMost }, rotation) => {
    const running = rotation.grid.slots.filter(({ runs }) => runs).map(({ index }) => index)
    const again = running.filter((slot, place) => place > 0 && canBegin(rotation, slot))
    for (const { id } of rotation.grid.drivers) {
      for (const first of again) {
        for (const last of again) {
          const stretch = running.slice(running.indexOf(first) - 1, running.indexOf(last) + 1)
          if (last < first || stretch.length <= atMost) continue
          const begun = stretch.slice(1).flatMap((slot) => rotation.startsOf(id, slot))
          if (begun.length < atMost) continue
          const driven = stretch.flatMap((slot) => rotation.driving(id, slot))
          const row: readonly Term[] = [...begun, ...times(driven, atMost)]
          rotation.row(row, { atMost: atMost - 1 + atMost * stretch.length, tag })
        }
      }
    }
  },
}

/** Whether somebody can begin a stint in a slot right after one of their own. */
function canBegin({ grid }: Rotation, slot: number): boolean {
  return !grid.goesOnAt[slot] || mayFollowOneself(grid, slot)
}
