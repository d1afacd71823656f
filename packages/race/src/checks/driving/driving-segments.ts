import { driversWho, type BenchPerson } from '../bench.ts'
import type { Check } from '../case.ts'
import { countInWords } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'

export const drivingSegments: Check<'drivingSegments'> = {
  axis: 'none',
  limits: ({ who, atLeast, atMost }, bench) =>
    leastAndMost('Segments each drives in,', { atLeast, atMost }, (sense, limit) =>
      driversWho(bench, who).map((driver) => ({
        sense,
        unit: 'count',
        limit,
        value: segmentsDriven(driver),
        people: [driver.id],
        spans: driver.drivingIds,
        ...whileItLasts(sense),
        says: () =>
          `${driver.name} drives in ${countInWords(segmentsDriven(driver), 'segment')}, ${SENSES[sense]} ${String(limit)}.`,
      })),
    ),
}

/** In how many segments somebody has the controller, however short. */
export function segmentsDriven({ stints }: BenchPerson): number {
  return new Set(stints.flatMap(({ spans }) => spans.map(({ segment }) => segment))).size
}
