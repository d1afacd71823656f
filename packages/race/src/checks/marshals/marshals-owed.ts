import { known } from '../../rules/shape.ts'
import type { Check } from '../case.ts'
import { mannedAtLeast } from './manned.ts'

/** People at posts at every instant of the segments, whoever they are; of sit-outs only where it says so. */
export const marshalsOwed: Check<'marshalsOwed'> = {
  axis: 'meeting',
  limits: ({ count, when }, bench) => {
    const limit = known(count)
    const owed = known(when)
    if (limit === undefined || owed === undefined) return []
    const segments = bench.timeline.segments.filter(
      ({ lane }) => owed === 'wholeRace' || lane === 'sitOut',
    )
    const cases = mannedAtLeast(bench, segments, limit)
    return [{ name: 'atLeast', called: 'People at posts, at least', cases }]
  },
}
