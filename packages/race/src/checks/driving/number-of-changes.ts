import type { Bench } from '../bench.ts'
import type { Check } from '../case.ts'
import { thereAre } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'
import { changesOf, isChange } from './relay.ts'

/**
 * Changes are those of the controller from one driver to another, also over a break, and those with oneself where
 * the rules let them begin a new stint; who is at the controller again after a break has not changed.
 */
export const numberOfChanges: Check<'numberOfChanges'> = {
  axis: 'none',
  limits: ({ of, atLeast, atMost }, bench) => {
    const value = of === 'stints' ? bench.turns.length : changes(bench)
    const counted = thereAre(value, of === 'stints' ? 'stint' : 'driver change')
    const called = of === 'stints' ? 'Stints in the race,' : 'Driver changes in the race,'
    return leastAndMost(called, { atLeast, atMost }, (sense, limit) => [
      {
        sense,
        unit: 'count',
        limit,
        value,
        ...whileItLasts(sense),
        says: () => `In the race ${counted}, ${SENSES[sense]} ${String(limit)}.`,
      },
    ])
  },
}

function changes(bench: Bench): number {
  return changesOf(bench).filter(isChange).length
}
