import { mandatoryStops } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** Exactly one mandatory stop about every multiple of a time on the race clock, counted on over segments. */
export interface StopRhythm {
  readonly id: string
  readonly kind: 'stopRhythm'
  readonly everyMs: number
  readonly toleranceMs: number
}

export const stopRhythm: RuleKind<StopRhythm> = {
  rows: ({ id: tag, everyMs, toleranceMs }, rotation) => {
    const stops = mandatoryStops(rotation)
    for (let dueMs = everyMs; dueMs < rotation.grid.raceMs; dueMs += everyMs) {
      const near = stops.filter(({ raceMs }) => Math.abs(raceMs - dueMs) <= toleranceMs)
      if (near.length > 0 && near.every(({ slot }) => slot.isPast)) continue
      rotation.row(
        near.map(({ column }) => [column, 1] as const),
        { atLeast: 1, atMost: 1, tag },
      )
    }
  },
}
