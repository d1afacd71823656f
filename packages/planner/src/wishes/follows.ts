import { times } from '../linear/model.ts'
import { comes, leaves, turnsOf } from '../rotation/turns.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** To take the controller only from somebody, or to hand it only to somebody; a stint without a neighbour keeps it. */
export interface Follows extends AnyWish {
  readonly kind: 'follows'
  readonly other: string
  /** `after`: this person drives after the other. `before`: the other drives after this person. */
  readonly where: 'before' | 'after'
}

export const follows: WishKind<Follows> = {
  rows: ({ id: tag, person, other, where, laps }, rotation) => {
    const missed = rotation.model.part({ cost: -laps })
    for (const turn of turnsOf(rotation)) {
      if (rotation.grid.slots[turn.after]?.isPast) continue
      const mine = (where === 'after' ? comes : leaves)(rotation, person, turn)
      const own = (where === 'after' ? leaves : comes)(rotation, person, turn)
      const theirs = (where === 'after' ? leaves : comes)(rotation, other, turn)
      if (mine.length === 0) continue
      const kept = [...theirs, ...own]
      rotation.row([[missed, 1], ...kept, ...times(mine, -1)], { atLeast: 0, tag })
    }
  },
}
