import { known } from '../../rules/shape.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { stopName } from './in-segments.ts'

/** Stops whose two counted moments were recorded; a planned one has no length, it goes when it may. */
export const stopMinimum: Check<'stopMinimum'> = {
  axis: 'meeting',
  limits: ({ minimumMs }, bench) => {
    const limit = known(minimumMs)
    if (limit === undefined) return []
    const cases = bench.mandatoryStops.flatMap((stop): readonly Case[] => {
      const { id, at, outAt, lastedMs } = stop
      if (lastedMs === undefined) return []
      return [
        {
          sense: 'atLeast',
          unit: 'ms',
          limit,
          value: lastedMs,
          at: outAt ?? at,
          stops: [id],
          says: () =>
            `For ${stopName(bench, stop)} the car stood ${durationInWords(lastedMs)}, at least ${durationInWords(limit)}.`,
        },
      ]
    })
    return [{ name: 'minimum', called: 'Each stop lasts at least', cases }]
  },
}
