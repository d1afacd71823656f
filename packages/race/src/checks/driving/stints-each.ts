import { driversWho } from '../bench.ts'
import type { Check } from '../case.ts'
import { countInWords } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'

export const stintsEach: Check<'stintsEach'> = {
  axis: 'none',
  limits: ({ who, atLeast, atMost }, bench) =>
    leastAndMost('Stints of each driver,', { atLeast, atMost }, (sense, limit) =>
      driversWho(bench, who).map((driver) => ({
        sense,
        unit: 'count',
        limit,
        value: driver.stints.length,
        people: [driver.id],
        spans: driver.drivingIds,
        ...whileItLasts(sense),
        says: () =>
          `${driver.name} has ${countInWords(driver.stints.length, 'stint')}, ${SENSES[sense]} ${String(limit)}.`,
      })),
    ),
}
