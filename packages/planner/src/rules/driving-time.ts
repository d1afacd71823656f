import { isOf, MINUTE_MS } from '../grid/grid.ts'
import { leastAndMost } from './least-and-most.ts'
import type { RuleKind } from './rule-kind.ts'

/** Each who drives, in the whole race. */
export interface DrivingTime {
  readonly id: string
  readonly kind: 'drivingTime'
  readonly who?: string
  readonly atLeastMs?: number
  readonly atMostMs?: number
}

export const drivingTime: RuleKind<DrivingTime> = {
  rows: ({ id, who, atLeastMs, atMostMs }, rotation) => {
    for (const person of rotation.grid.drivers.filter((one) => isOf(one, who))) {
      const value = [[rotation.totalMinutes(person), 1]] as const
      const limits = { atLeast: inMinutes(atLeastMs), atMost: inMinutes(atMostMs) }
      leastAndMost(rotation, { person, value, tag: id, ...limits })
    }
  },
}

export function inMinutes(ms: number | undefined): number | undefined {
  return ms === undefined ? undefined : ms / MINUTE_MS
}
