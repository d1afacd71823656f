import { drivenMs, MINUTE_MS, type Grid } from '../grid/grid.ts'
import { times, type Term } from '../linear/model.ts'
import { leastAndMost } from './least-and-most.ts'
import { inMinutes } from './driving-time.ts'
import type { RuleKind } from './rule-kind.ts'

/** Fixed blocks of the race clock from the first green; the last, where it is shorter, for too much only. */
export interface BlockDriving {
  readonly id: string
  readonly kind: 'blockDriving'
  readonly blockMs: number
  readonly atLeastMs?: number
  readonly atMostMs?: number
}

export const blockDriving: RuleKind<BlockDriving> = {
  rows: ({ id: tag, blockMs, atLeastMs, atMostMs }, rotation) => {
    const { grid } = rotation
    for (let fromMs = 0; fromMs < grid.raceMs; fromMs += blockMs) {
      const parts = partsOf(grid, fromMs, Math.min(grid.raceMs, fromMs + blockMs))
      const isWhole = fromMs + blockMs <= grid.raceMs
      for (const person of grid.drivers) {
        const value = parts.flatMap(([slot, ms]): readonly Term[] =>
          times(rotation.driving(person.id, slot), ms / MINUTE_MS),
        )
        const atLeast = isWhole ? inMinutes(atLeastMs) : undefined
        leastAndMost(rotation, { person, value, atLeast, atMost: inMinutes(atMostMs), tag })
      }
    }
  },
}

/** Driving of each slot that lies in a block. */
function partsOf(grid: Grid, fromMs: number, toMs: number): readonly (readonly [number, number])[] {
  return grid.slots.flatMap((slot): (readonly [number, number])[] => {
    const endMs = (grid.offsetMs.get(slot.segment.id) ?? 0) + slot.toMs
    const beginMs = endMs - drivenMs(grid, slot)
    const ms = Math.min(endMs, toMs) - Math.max(beginMs, fromMs)
    return ms > 0 && slot.runs ? [[slot.index, ms]] : []
  })
}
