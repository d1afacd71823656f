import type { Term } from '../linear/model.ts'
import type { Duty } from '../problem/problem.ts'
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
    const { grid, model } = rotation
    const missed: Term = [model.column({ cost: -laps }), 1]
    const blocks: Term[] = []
    for (const first of beginnings(rotation, fromAt)) {
      if (first + lengthMs > toAt) continue
      const block: Term = [model.column(), 1]
      blocks.push(block)
      for (const slot of grid.slots) {
        if (slot.toAt <= first || slot.fromAt >= first + lengthMs) continue
        for (const duty of DUTIES) {
          const held = rotation.onDuty(person, duty, slot.index)
          if (held.length > 0) rotation.row([block, ...held], { atMost: 1, tag })
        }
      }
    }
    rotation.row([missed, ...blocks], { atLeast: 1, tag })
  },
}

/** A block begins with the time itself or where a duty ends. */
function beginnings({ grid }: { grid: { slots: readonly { toAt: number }[] } }, fromAt: number) {
  return [fromAt, ...grid.slots.map(({ toAt }) => toAt).filter((at) => at > fromAt)]
}
