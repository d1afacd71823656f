/** Stops that count for what the organiser demands: those given as such, and every one the program chooses. */
import type { Slot } from '../grid/slots.ts'
import type { Rotation } from './rotation.ts'

export interface StopColumn {
  readonly slot: Slot
  readonly column: number
  /** Race clock counted on from segment to segment. */
  readonly raceMs: number
}

export function mandatoryStops(rotation: Rotation): readonly StopColumn[] {
  return allStops(rotation).filter(({ slot }) => slot.stop?.mandatory ?? true)
}

export function allStops({ grid, stops }: Rotation): readonly StopColumn[] {
  return grid.slots.flatMap((slot): StopColumn[] => {
    const column = stops.get(slot.index)
    if (column === undefined) return []
    return [{ slot, column, raceMs: (grid.offsetMs.get(slot.segment.id) ?? 0) + slot.fromMs }]
  })
}
