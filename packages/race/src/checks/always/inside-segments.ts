import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import { doesInWords, stretchInWords } from './duties.ts'

/**
 * What is planned lies inside its segment: it ends after it begins and not after the segment does; a stop is made
 * before the end. What was raced was as it was.
 */
export const insideSegments: AlwaysCheck = {
  called: 'Inside its segment',
  axis: 'race',
  limits: (bench) => {
    const segments = new Map(bench.timeline.segments.map((segment) => [segment.id, segment]))
    const spans = bench.timeline.spans
      .filter(({ done }) => !done)
      .map((span) => ofSpan(span, segments.get(span.segment), bench))
    const stops = bench.timeline.stops
      .filter(({ done }) => !done)
      .map((stop) => ofStop(stop, segments.get(stop.segment), bench))
    return [
      { name: 'spans', called: 'Duties outside their segment', cases: spans.flat() },
      { name: 'stops', called: 'Stops outside their segment', cases: stops.flat() },
    ]
  },
}

function ofSpan(
  span: TimelineSpan,
  segment: TimelineSegment | undefined,
  bench: Bench,
): readonly Case[] {
  const { person, fromMs, toMs, fromAt } = span
  if (segment && toMs > fromMs && toMs <= (segment.lengthMs ?? Infinity)) return []
  const about = { people: [person], spans: [span.id], at: fromAt }
  const who = () => `${bench.nameOf(person)} ${doesInWords(span)} ${stretchInWords(bench, span)}`
  if (!segment) return [{ ...about, ...GONE, says: () => `${who()}.` }]
  if (toMs <= fromMs) {
    const limit = { sense: 'atLeast', unit: 'ms', limit: 1, value: toMs - fromMs } as const
    return [{ ...about, ...limit, says: () => `${who()}: it ends before it begins.` }]
  }
  const { lengthMs } = segment
  if (lengthMs === undefined) return []
  const limit = { sense: 'atMost', unit: 'ms', limit: lengthMs, value: toMs } as const
  const over = `it is over at ${durationInWords(lengthMs)}`
  return [{ ...about, ...limit, says: () => `${who()}; ${over}.` }]
}

function ofStop(
  stop: TimelineStop,
  segment: TimelineSegment | undefined,
  bench: Bench,
): readonly Case[] {
  if (segment && stop.atMs < (segment.lengthMs ?? Infinity)) return []
  const about = { stops: [stop.id], at: stop.at }
  const place = placeInWords(bench, { segment: stop.segment, clockMs: stop.atMs })
  if (!segment) return [{ ...about, ...GONE, says: () => `There is a stop at ${place}.` }]
  const { lengthMs } = segment
  if (lengthMs === undefined) return []
  const limit = { sense: 'atMost', unit: 'ms', limit: lengthMs - 1, value: stop.atMs } as const
  const over = `it is over at ${durationInWords(lengthMs)}`
  return [{ ...about, ...limit, says: () => `There is a stop at ${place}; ${over}.` }]
}

/** Its segment is not in the programme. */
const GONE = { sense: 'atMost', unit: 'count', limit: 0, value: 1 } as const
