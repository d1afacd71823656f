import { times } from '../linear/model.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** Not to drive first, or last. */
export interface NotAtEnd extends AnyWish {
  readonly kind: 'notAtEnd'
  readonly which: 'first' | 'last'
}

export const notAtEnd: WishKind<NotAtEnd> = {
  rows: ({ id: tag, person, which, laps }, rotation) => {
    const running = rotation.grid.slots.filter(({ runs }) => runs)
    const slot = which === 'first' ? running[0] : running.at(-1)
    if (!slot || slot.isPast) return
    const missed = rotation.model.part({ cost: -laps })
    const driving = rotation.driving(person, slot.index)
    rotation.row([[missed, 1], ...times(driving, -1)], { atLeast: 0, tag })
  },
}
