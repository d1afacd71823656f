import type { Check } from '../case.ts'
import { thereAre } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'

export const numberOfDrivers: Check<'numberOfDrivers'> = {
  axis: 'none',
  limits: ({ atLeast, atMost }, { drivers }) =>
    leastAndMost('Drivers in the race,', { atLeast, atMost }, (sense, limit) => [
      {
        sense,
        unit: 'count',
        limit,
        value: drivers.length,
        people: drivers.map(({ id }) => id),
        ...whileItLasts(sense),
        says: () =>
          `In the race ${thereAre(drivers.length, 'driver')}, ${SENSES[sense]} ${String(limit)}.`,
      },
    ]),
}
