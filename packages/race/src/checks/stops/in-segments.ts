/** Stops and segments as the checks of this folder look at them. */
import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { Bench } from '../bench.ts'
import { placeInWords } from '../places.ts'

/** Segments in which the car runs. */
export function runSegments({ timeline }: Bench): readonly TimelineSegment[] {
  return timeline.segments.filter(({ lane }) => lane !== 'sitOut')
}

/**
 * How far a segment's race clock has come: to its end in a plan, and in a race to the last that anybody did;
 * 0 while it has not begun.
 */
export function cameToMs(
  { timeline, spansIn, stopsIn }: Bench,
  { id, lengthMs, over }: TimelineSegment,
): number {
  if (timeline.isWhole && !over && lengthMs !== undefined) return lengthMs
  let cameTo = 0
  for (const { toMs } of spansIn(id)) cameTo = Math.max(cameTo, toMs)
  for (const { atMs } of stopsIn(id)) cameTo = Math.max(cameTo, atMs)
  return cameTo
}

/** Of a case that concerns a whole segment: its last instant, and that it can be made good while it is not over. */
export function endOf({ endsAt, over }: TimelineSegment): {
  readonly at?: number
  readonly untilTheEnd?: true
} {
  return {
    ...(endsAt === undefined ? {} : { at: endsAt - 1 }),
    ...(over ? {} : { untilTheEnd: true }),
  }
}

/** `the stop at 0:20 of segment 1`. */
export function stopName(bench: Bench, { segment, atMs }: TimelineStop): string {
  return `the stop at ${placeInWords(bench, { segment, clockMs: atMs })}`
}
