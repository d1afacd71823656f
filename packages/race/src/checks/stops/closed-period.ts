import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { stopName } from './in-segments.ts'

/**
 * Only mandatory stops: with any other the car may come in at any time. Without a length in time there is no last
 * part to keep out of.
 */
export const closedPeriod: Check<'closedPeriod'> = {
  axis: 'race',
  limits: ({ of, firstMs, lastMs }, bench) => {
    const first = known(firstMs)
    const last = known(lastMs)
    const placed = bench.mandatoryStops.map((stop) => placeOf(stop, of, bench))
    return [
      ...(first === undefined
        ? []
        : [
            {
              name: 'first',
              called: 'Stops after the start, at least',
              cases: placed.map(({ stop, sinceMs }) =>
                caseOf({ stop, value: sinceMs, limit: first, to: 'start' }, of, bench),
              ),
            },
          ]),
      ...(last === undefined
        ? []
        : [
            {
              name: 'last',
              called: 'Stops before the end, at least',
              cases: placed.flatMap(({ stop, leftMs }) =>
                leftMs === undefined
                  ? []
                  : [caseOf({ stop, value: leftMs, limit: last, to: 'end' }, of, bench)],
              ),
            },
          ]),
    ]
  },
}

interface Placed {
  readonly stop: TimelineStop
  readonly sinceMs: number
  readonly leftMs?: number
}

function placeOf(stop: TimelineStop, of: 'segment' | 'race', bench: Bench): Placed {
  const { segments } = bench.timeline
  if (of === 'segment') {
    const lengthMs = segments.find(({ id }) => id === stop.segment)?.lengthMs
    const left = lengthMs === undefined ? {} : { leftMs: lengthMs - stop.atMs }
    return { stop, sinceMs: stop.atMs, ...left }
  }
  const sinceMs = bench.raceClockMs(stop.segment, stop.atMs)
  const timed = segments.every(({ lengthMs }) => lengthMs !== undefined)
  return { stop, sinceMs, ...(timed ? { leftMs: bench.raceMs - sinceMs } : {}) }
}

interface Apart {
  readonly stop: TimelineStop
  readonly value: number
  readonly limit: number
  readonly to: 'start' | 'end'
}

function caseOf({ stop, value, limit, to }: Apart, of: 'segment' | 'race', bench: Bench): Case {
  return {
    sense: 'atLeast',
    unit: 'ms',
    limit,
    value,
    at: stop.at,
    stops: [stop.id],
    says: () =>
      `Between ${stopName(bench, stop)} and the ${to} of the ${of} lies ${durationInWords(value)}, at least ${durationInWords(limit)}.`,
  }
}
