import type { Term } from '../linear/model.ts'
import { mandatoryStops as stopsOf } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** How many stops the organiser demands; nothing in a segment the team sits out. */
export interface MandatoryStops {
  readonly id: string
  readonly kind: 'mandatoryStops'
  readonly count: number
  readonly per: 'segment' | 'race'
}

export const mandatoryStops: RuleKind<MandatoryStops> = {
  rows: ({ id: tag, count, per }, rotation) => {
    const stops = stopsOf(rotation)
    const term = ({ column }: { column: number }): Term => [column, 1]
    if (per === 'race') {
      rotation.row(stops.map(term), { atLeast: count, tag })
      return
    }
    for (const segment of rotation.grid.problem.segments) {
      if (segment.lane === 'sitOut') continue
      const here = stops.filter(({ slot }) => slot.segment === segment)
      rotation.row(here.map(term), { atLeast: count, tag })
    }
  },
}
