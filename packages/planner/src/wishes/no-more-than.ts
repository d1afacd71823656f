import { MINUTE_MS, mostDrivenMs } from '../grid/grid.ts'
import type { AnyWish, WishKind } from './wish-kind.ts'

/** No more than so much driving, in the whole race. */
export interface NoMoreThan extends AnyWish {
  readonly kind: 'noMoreThan'
  readonly atMostMs: number
}

export const noMoreThan: WishKind<NoMoreThan> = {
  rows: ({ id: tag, person, laps, atMostMs }, rotation) => {
    const driver = rotation.grid.drivers.find(({ id }) => id === person)
    if (!driver) return
    const missed = rotation.model.column({ cost: -laps })
    const total = rotation.totalMinutes(driver)
    const over = Math.max(0, mostDrivenMs(rotation.grid) - atMostMs) / MINUTE_MS
    rotation.row(
      [
        [total, 1],
        [missed, -over],
      ],
      { atMost: atMostMs / MINUTE_MS, tag },
    )
  },
}
