import { times } from '../linear/model.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** To drive only while somebody else has a duty too: at the wall, the bench or a post. */
export interface Beside extends AnyWish {
  readonly kind: 'beside'
  readonly other: string
}

const BESIDE = ['post', 'wall', 'bench'] as const

export const beside: WishKind<Beside> = {
  rows: ({ id: tag, person, other, laps }, rotation) => {
    const missed = rotation.model.part({ cost: -laps })
    for (const { index, isPast } of rotation.grid.slots) {
      const driving = rotation.driving(person, index)
      if (driving.length === 0 || isPast) continue
      const there = BESIDE.flatMap((duty) => rotation.onDuty(other, duty, index))
      rotation.row([[missed, 1], ...there, ...times(driving, -1)], { atLeast: 0, tag })
    }
  },
}
