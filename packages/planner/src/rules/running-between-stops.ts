import { mandatoryStops } from '../rotation/mandatory.ts'
import type { RuleKind } from './rule-kind.ts'

/** Running between two mandatory stops, on the race clock counted on over segments, from the car out to the car in. */
export interface RunningBetweenStops {
  readonly id: string
  readonly kind: 'runningBetweenStops'
  readonly atLeastMs: number
}

export const runningBetweenStops: RuleKind<RunningBetweenStops> = {
  rows: ({ id: tag, atLeastMs }, rotation) => {
    const stops = mandatoryStops(rotation)
    const apartMs = atLeastMs + rotation.grid.problem.stop.standsMs
    stops.forEach((first, place) => {
      const near = stops.slice(place).filter(({ raceMs }) => raceMs - first.raceMs < apartMs)
      if (near.length < 2 || near.at(-1)?.slot.isPast) return
      rotation.row(
        near.map(({ column }) => [column, 1] as const),
        { atMost: 1, tag },
      )
    })
  },
}
