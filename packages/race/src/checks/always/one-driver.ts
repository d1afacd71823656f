import type { AlwaysCheck, Case } from '../case.ts'
import { overlapsOf, stretchInWords } from './duties.ts'

/** One car, one controller. */
export const oneDriver: AlwaysCheck = {
  called: 'One driver at a time',
  axis: 'meeting',
  limits: (bench) => {
    const driving = bench.timeline.spans.filter(({ duty }) => duty === 'controller')
    const cases = overlapsOf(driving)
      .filter(({ one, other }) => one.person !== other.person)
      .map((overlap): Case => {
        const { one, other, overlapMs, fromAt } = overlap
        return {
          sense: 'atMost',
          unit: 'ms',
          limit: 0,
          value: overlapMs,
          at: fromAt,
          people: [one.person, other.person],
          spans: [one.id, other.id],
          says: () =>
            `${bench.nameOf(one.person)} and ${bench.nameOf(other.person)} both drive, ${stretchInWords(bench, overlap)}.`,
        }
      })
    return [{ name: 'atOnce', called: 'Two drivers at once', cases }]
  },
}
