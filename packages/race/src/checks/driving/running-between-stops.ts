import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'

/**
 * Between two mandatory stops, on the race clock counted on over segments: from the car out to the car in. A stop
 * lasts as long as it did, or its minimum where its end is not recorded or still planned. What is mended in between is no stop of this rule.
 */
export const runningBetweenStops: Check<'runningBetweenStops'> = {
  axis: 'race',
  limits: ({ atLeastMs }, bench) => {
    const limit = known(atLeastMs)
    if (limit === undefined) return []
    const inOrder = [...bench.mandatoryStops].sort((a, b) => a.at - b.at)
    const cases = inOrder.flatMap((stop, index): Case[] => {
      const before = inOrder[index - 1]
      if (!before) return []
      const value = runningMs(bench, before, stop)
      const says = () =>
        `Before the stop at ${placeInWords(bench, { segment: stop.segment, clockMs: stop.atMs })} the car runs ${durationInWords(value)}, at least ${durationInWords(limit)}.`
      const stops = [before.id, stop.id]
      return [{ sense: 'atLeast', unit: 'ms', limit, value, at: stop.at, stops, says }]
    })
    return [{ name: 'atLeast', called: 'Running between two stops at least', cases }]
  },
}

function runningMs(bench: Bench, before: TimelineStop, stop: TimelineStop): number {
  const stoodMs = before.outAt === undefined ? bench.stopMinimumMs : before.outAt - before.at
  const [fromMs, toMs] = [before, stop].map(({ segment, atMs }) =>
    bench.raceClockMs(segment, atMs),
  ) as [number, number]
  return Math.max(0, toMs - fromMs - stoodMs)
}
