import { sharedMs } from '../grid/grid.ts'
import { times } from '../linear/model.ts'
import type { Duty } from '../problem/problem.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** None of some duties between two times: not at night. */
export interface NotBetween extends AnyWish {
  readonly kind: 'notBetween'
  readonly duties: readonly Duty[]
  readonly fromAt: number
  readonly toAt: number
}

export const notBetween: WishKind<NotBetween> = {
  rows: ({ id: tag, person, duties, laps, ...stretch }, rotation) => {
    const missed = rotation.model.part({ cost: -laps })
    for (const slot of rotation.grid.slots) {
      if (slot.isPast || sharedMs(slot, stretch) === 0) continue
      for (const duty of duties) {
        const held = rotation.onDuty(person, duty, slot.index)
        if (held.length > 0) rotation.row([[missed, 1], ...times(held, -1)], { atLeast: 0, tag })
      }
    }
  },
}
