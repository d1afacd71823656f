import type { TimelineSegment } from '../../timeline/segments.ts'
import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { countInWords } from '../in-words.ts'
import { mannedAtLeast } from './manned.ts'

/** How many posts a hall has only the rule can tell: without that number marshalling is not counted. */
export const sitOutDuty: Check<'sitOutDuty'> = {
  axis: 'meeting',
  limits: ({ obliges, posts }, bench) => {
    const duty = known(obliges)
    const limit = known(posts)
    const sitOuts = bench.timeline.segments.filter(({ lane }) => lane === 'sitOut')
    if (duty === undefined) return []
    if (duty === 'rest') {
      const cases = sitOuts.map((segment) => atRest(bench, segment))
      return [{ name: 'rest', called: 'People at posts in a sit-out', cases }]
    }
    if (limit === undefined) return []
    const cases = mannedAtLeast(bench, sitOuts, limit)
    return [{ name: 'posts', called: 'People at posts in a sit-out, at least', cases }]
  },
}

function atRest({ spansIn, segmentName }: Bench, { id, startsAt }: TimelineSegment): Case {
  const there = spansIn(id).filter(({ duty }) => duty === 'post')
  const people = [...new Set(there.map(({ person }) => person))]
  return {
    sense: 'atMost',
    unit: 'count',
    limit: 0,
    value: people.length,
    at: there[0]?.fromAt ?? startsAt,
    people,
    spans: there.map((span) => span.id),
    says: () =>
      `In ${segmentName(id)}, a sit-out to rest in, ${countInWords(people.length, 'person marshals', 'people marshal')}.`,
  }
}
