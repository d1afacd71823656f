import { known } from '../../rules/shape.ts'
import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { thereAre } from '../in-words.ts'
import { endOf, runSegments } from './in-segments.ts'

/** Nothing is owed in a segment the team sits out. */
export const mandatoryStops: Check<'mandatoryStops'> = {
  axis: 'none',
  limits: ({ count, per }, bench) => {
    const limit = known(count)
    if (limit === undefined) return []
    const stops = bench.mandatoryStops
    if (per === 'race') {
      const cases = [demanded({ stops, limit, where: 'the race', untilTheEnd: true })]
      return [{ name: 'inRace', called: 'Mandatory stops in the race', cases }]
    }
    const cases = runSegments(bench).map((segment) => inSegment(bench, segment, limit))
    return [{ name: 'inSegment', called: 'Mandatory stops in each segment', cases }]
  },
}

function inSegment(bench: Bench, segment: TimelineSegment, limit: number): Case {
  const stops = bench.stopsIn(segment.id).filter(({ mandatory }) => mandatory)
  return demanded({ stops, limit, where: bench.segmentName(segment.id), ...endOf(segment) })
}

interface Demanded {
  readonly stops: readonly TimelineStop[]
  readonly limit: number
  readonly where: string
  readonly at?: number
  readonly untilTheEnd?: true
}

function demanded({ stops, limit, where, ...when }: Demanded): Case {
  const value = stops.length
  return {
    sense: 'atLeast',
    unit: 'count',
    limit,
    value,
    stops: stops.map(({ id }) => id),
    ...when,
    says: () => `In ${where} ${thereAre(value, 'mandatory stop')}, at least ${limit}.`,
  }
}
