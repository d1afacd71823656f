/** So many people at posts, at every instant of segments. */
import type { TimelineSegment } from '../../timeline/segments.ts'
import type { Bench } from '../bench.ts'
import type { Case } from '../case.ts'
import { countInWords } from '../in-words.ts'
import { watchesOf, watchName } from './watches.ts'

export function mannedAtLeast(
  bench: Bench,
  segments: readonly TimelineSegment[],
  limit: number,
): readonly Case[] {
  return segments.flatMap((segment) =>
    watchesOf(bench, segment).map((watch): Case => ({
      sense: 'atLeast',
      unit: 'count',
      limit,
      value: watch.count,
      at: watch.fromAt,
      people: watch.people,
      spans: watch.spans,
      says: () =>
        `At posts ${watchName(bench, watch)}: ${countInWords(watch.count, 'person', 'people')}, at least ${limit}.`,
    })),
  )
}
