import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { countInWords, durationInWords, thereAre } from '../in-words.ts'
import { cameToMs, stopName } from './in-segments.ts'

/** More than this no plan can hold, and a rhythm half typed may ask for millions. */
const MOST_STOPS = 100

/** Exactly one mandatory stop about every multiple that lies before the end of the race. */
export const stopRhythm: Check<'stopRhythm'> = {
  axis: 'race',
  limits: ({ everyMs, toleranceMs }, bench) => {
    const every = known(everyMs)
    const tolerance = known(toleranceMs)
    if (!every || tolerance === undefined) return []
    const times = Math.ceil(bench.raceMs / every) - 1
    const placed = bench.mandatoryStops.map((stop) => ({
      stop,
      raceMs: bench.raceClockMs(stop.segment, stop.atMs),
    }))
    const cameTo = raceCameToMs(bench)
    const cases =
      times > MOST_STOPS
        ? [tooMany(times, placed.length)]
        : Array.from({ length: Math.max(0, times) }, (_, k) =>
            about({ dueMs: (k + 1) * every, tolerance, placed, bench, cameTo }),
          )
    return [{ name: 'rhythm', called: 'One stop each time', cases }]
  },
}

interface Placed {
  readonly stop: TimelineStop
  /** Race clock counted on from segment to segment. */
  readonly raceMs: number
}

interface Due {
  readonly dueMs: number
  readonly tolerance: number
  readonly placed: readonly Placed[]
  readonly bench: Bench
  readonly cameTo: number
}

function about({ dueMs, tolerance, placed, bench, cameTo }: Due): Case {
  const off = ({ raceMs }: Placed) => Math.abs(raceMs - dueMs)
  const near = placed.filter((one) => off(one) <= tolerance)
  const [only] = near
  const stops = near.map(({ stop }) => stop.id)
  if (only && near.length === 1) {
    return {
      ...{
        sense: 'atMost',
        unit: 'ms',
        limit: tolerance,
        value: off(only),
        stops,
        at: only.stop.at,
      },
      says: () =>
        `Between ${durationInWords(dueMs)} of the race and ${stopName(bench, only.stop)} lies ${durationInWords(off(only))}, at most ${durationInWords(tolerance)}.`,
    }
  }
  return {
    sense: only ? 'atMost' : 'atLeast',
    unit: 'count',
    limit: 1,
    value: near.length,
    stops,
    ...(!only && cameTo <= dueMs + tolerance ? { untilTheEnd: true } : {}),
    says: () =>
      `About ${durationInWords(dueMs)} of the race ${thereAre(near.length, 'mandatory stop')}, exactly one is due, at most ${durationInWords(tolerance)} early or late.`,
  }
}

function raceCameToMs(bench: Bench): number {
  return bench.timeline.segments.reduce((furthest, segment) => {
    const cameTo = cameToMs(bench, segment)
    return cameTo === 0 ? furthest : Math.max(furthest, bench.raceClockMs(segment.id, cameTo))
  }, 0)
}

function tooMany(limit: number, value: number): Case {
  return {
    sense: 'atLeast',
    unit: 'count',
    limit,
    value,
    says: () =>
      `The rhythm asks for ${countInWords(limit, 'stop')}, and ${thereAre(value, 'mandatory stop')}.`,
  }
}
