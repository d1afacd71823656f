import { drivingTime } from './driving-time.ts'
import type { RuleKind } from './rule-kind.ts'
import { shareDown, shareUp } from './shares.ts'

/** Thousandths of the race clock of all segments; does not apply where the race is no longer than `longerThanMs`. */
export interface DrivingShare {
  readonly id: string
  readonly kind: 'drivingShare'
  readonly who?: string
  readonly atLeast?: number
  readonly atMost?: number
  readonly longerThanMs?: number
}

export const drivingShare: RuleKind<DrivingShare> = {
  rows: ({ id, who, atLeast, atMost, longerThanMs = 0 }, rotation) => {
    const { raceMs } = rotation.grid
    if (raceMs <= longerThanMs) return
    drivingTime.rows?.(
      {
        ...{ id, kind: 'drivingTime' },
        ...(who === undefined ? {} : { who }),
        ...(atLeast === undefined ? {} : { atLeastMs: shareUp(raceMs, atLeast) }),
        ...(atMost === undefined ? {} : { atMostMs: shareDown(raceMs, atMost) }),
      },
      rotation,
    )
  },
}
