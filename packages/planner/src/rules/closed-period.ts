import type { Grid } from '../grid/grid.ts'
import type { Slot } from '../grid/slots.ts'
import { mandatoryStops } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** No mandatory stop at the beginning or the end, of each segment or of the race. */
export interface ClosedPeriod {
  readonly id: string
  readonly kind: 'closedPeriod'
  readonly of: 'segment' | 'race'
  readonly firstMs?: number
  readonly lastMs?: number
}

export const closedPeriod: RuleKind<ClosedPeriod> = {
  bars: (rule, grid) => ({ stop: (slot) => isClosed(rule, slot, grid) }),
  rows: (rule, rotation) => {
    for (const { slot, column } of mandatoryStops(rotation)) {
      if (!slot.stop || slot.isPast || !isClosed(rule, slot, rotation.grid)) continue
      rotation.row([[column, 1]], { atMost: 0, tag: rule.id })
    }
  },
}

function isClosed({ of, firstMs = 0, lastMs = 0 }: ClosedPeriod, slot: Slot, grid: Grid): boolean {
  const isOfRace = of === 'race'
  const sinceMs = slot.fromMs + (isOfRace ? (grid.offsetMs.get(slot.segment.id) ?? 0) : 0)
  const leftMs = (isOfRace ? grid.raceMs : slot.segment.lengthMs) - sinceMs
  return sinceMs < firstMs || leftMs < lastMs
}
