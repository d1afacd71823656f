import { MINUTE_MS, mostDrivenMs } from '../grid/grid.ts'
import type { RuleKind } from './rule-kind.ts'

/** Whoever drives most against whoever drives least, of those who drive. */
export interface DrivingSpread {
  readonly id: string
  readonly kind: 'drivingSpread'
  readonly atMostMs: number
}

export const drivingSpread: RuleKind<DrivingSpread> = {
  rows: ({ id: tag, atMostMs }, rotation) => {
    const { grid, model } = rotation
    const all = mostDrivenMs(grid) / MINUTE_MS
    const [least, most] = [model.part({ upper: Infinity }), model.part({ upper: Infinity })]
    for (const person of grid.drivers) {
      const total = rotation.totalMinutes(person)
      const drives = rotation.drives(person)
      model.row(
        [
          [most, 1],
          [total, -1],
        ],
        { atLeast: 0, tag },
      )
      model.row(
        [
          [total, 1],
          [least, -1],
          [drives, -all],
        ],
        { atLeast: -all, tag },
      )
    }
    model.row(
      [
        [most, 1],
        [least, -1],
      ],
      { atMost: atMostMs / MINUTE_MS, tag },
    )
  },
}
