import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench } from '../bench.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { cutOut, type Stretch } from '../stretches.ts'
import { stretchInWords } from './duties.ts'

/**
 * Somebody has the controller for the whole race clock of each segment the car has a lane in; during a stop nobody
 * needs to. A race that is not over is judged as far as it came, in segments with any duty. A segment counted in
 * laps is judged as far as anybody has a duty in it.
 */
export const somebodyDrives: AlwaysCheck = {
  called: 'Somebody drives',
  axis: 'race',
  limits: (bench) => {
    const cases = bench.timeline.segments.flatMap((segment) => casesOf(segment, bench))
    return [{ name: 'gap', called: 'Without a driver', cases }]
  },
}

function casesOf(segment: TimelineSegment, bench: Bench): readonly Case[] {
  const { id, startsAt } = segment
  if (segment.lane === 'sitOut') return []
  const driving = ofThisRun(segment, bench).filter(({ duty }) => duty === 'controller')
  const race = { fromAt: 0, toAt: reachedMs(segment, bench) }
  const manned = driving.map(({ fromMs, toMs }) => ({ fromAt: fromMs, toAt: toMs }))
  return cutOut(race, [...manned, ...stopsIn(segment, bench)]).map((gap): Case => {
    const [fromMs, toMs] = [gap.fromAt, gap.toAt]
    const before = driving.filter((span) => span.toMs <= fromMs).at(-1)
    const next = driving.find((span) => span.fromMs >= toMs)
    const at = before ? before.toAt + fromMs - before.toMs : startsAt + fromMs
    return {
      sense: 'atMost',
      unit: 'ms',
      limit: 0,
      value: toMs - fromMs,
      at,
      spans: [before, next].flatMap((span) => (span ? [span.id] : [])),
      says: () => `Nobody drives ${stretchInWords(bench, { segment: id, fromMs, toMs })}.`,
    }
  })
}

/** What was done before the segment was run again lies on the clock of the run before. */
function ofThisRun({ id, startsAt }: TimelineSegment, { spansIn }: Bench): readonly TimelineSpan[] {
  return spansIn(id).filter(({ done, toAt }) => !done || toAt > startsAt)
}

function reachedMs(segment: TimelineSegment, bench: Bench): number {
  const { lengthMs, over } = segment
  const { timeline } = bench
  const here = ofThisRun(segment, bench)
  const raced = over && here.some(({ done }) => done)
  if (timeline.isWhole && lengthMs !== undefined && !raced) return lengthMs
  return here.reduce((furthest, { toMs }) => Math.max(furthest, toMs), 0)
}

/** Stops of a segment as stretches of its race clock. */
function stopsIn({ id }: TimelineSegment, bench: Bench): readonly Stretch[] {
  return bench.stopsIn(id).map(({ at, atMs, outAt }) => ({
    fromAt: atMs,
    toAt: atMs + (outAt === undefined ? bench.stopMinimumMs : outAt - at),
  }))
}
