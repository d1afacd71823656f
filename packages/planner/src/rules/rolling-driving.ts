import {
  betweenMs,
  drivenOf,
  isOf,
  MINUTE_MS,
  sharedMs,
  type Grid,
  type Stretch,
} from '../grid/grid.ts'
import { times, type Term } from '../linear/model.ts'
import type { Rotation } from '../rotation/rotation.ts'
import type { RuleKind } from './rule-kind.ts'

/**
 * At most so much driving in any window of a length, at every instant of meeting time. What is driven in a window is
 * largest where the window begins with a piece of driving or ends with one, and pieces begin and end with slots: two
 * windows a slot are enough.
 */
export interface RollingDriving {
  readonly id: string
  readonly kind: 'rollingDriving'
  readonly who?: string
  readonly atMostMs: number
  readonly withinMs: number
}

export const rollingDriving: RuleKind<RollingDriving> = {
  rows: ({ id: tag, who, atMostMs, withinMs }, rotation) => {
    const { grid } = rotation
    const pieces = piecesOf(grid)
    for (const window of windowsOf(pieces, withinMs)) {
      const inside = pieces.filter((piece) => sharedMs(piece, window) > 0)
      const most = inside.reduce((sum, piece) => sum + sharedMs(piece, window), 0)
      if (most <= atMostMs || inside.every(({ slot }) => grid.slots[slot]?.isPast)) continue
      for (const { id } of grid.drivers.filter((one) => isOf(one, who))) {
        const driven = inside.flatMap((piece) =>
          times(drivenIn(rotation, id, piece), sharedMs(piece, window) / MINUTE_MS),
        )
        rotation.row(driven, { atMost: atMostMs / MINUTE_MS, tag })
      }
    }
  },
}

interface Piece extends Stretch {
  readonly slot: number
  /** The lane change before the slot. */
  readonly isBetween: boolean
}

function piecesOf(grid: Grid): readonly Piece[] {
  return grid.slots.flatMap((slot): Piece[] => {
    if (!slot.runs) return []
    const between = betweenMs(grid, slot)
    const change = { fromAt: slot.fromAt - between, toAt: slot.fromAt }
    return [
      ...(between > 0 ? [{ slot: slot.index, isBetween: true, ...change }] : []),
      { slot: slot.index, isBetween: false, ...drivenOf(grid, slot) },
    ]
  })
}

function windowsOf(pieces: readonly Piece[], withinMs: number): readonly Stretch[] {
  const starts = pieces.flatMap(({ fromAt, toAt }) => [fromAt, toAt - withinMs])
  return [...new Set(starts)].map((fromAt) => ({ fromAt, toAt: fromAt + withinMs }))
}

/** A lane change is driven by whoever drives on both sides of it. */
function drivenIn(rotation: Rotation, person: string, { slot, isBetween }: Piece): readonly Term[] {
  const driving = rotation.driving(person, slot)
  if (!isBetween) return driving
  return [...driving, ...times(rotation.startsOf(person, slot), -1)]
}
