import type { Duty } from '../problem/problem.ts'
import { blocksOff } from '../rotation/blocks-off.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** One unbroken block off all duty, so long, between two times. */
export interface BlockOff extends AnyWish {
  readonly kind: 'blockOff'
  readonly lengthMs: number
  readonly fromAt: number
  readonly toAt: number
}

const DUTIES: readonly Duty[] = ['controller', 'post', 'wall', 'bench']

export const blockOff: WishKind<BlockOff> = {
  rows: ({ id: tag, person, laps, lengthMs, fromAt, toAt }, rotation) => {
    const missed = rotation.model.column({ cost: -laps })
    const windows = [{ fromAt, toAt }]
    const blocks = blocksOff(rotation, { tag, person, lengthMs, windows, duties: DUTIES })
    rotation.row([[missed, 1], ...blocks], { atLeast: 1, atMost: 1, tag })
  },
}
