/** The race as the planner has it: segments with their stops, and what of them is over. */
import type { GivenStop, Segment, Span } from '@pitlamp/planner'
import { clockAt, type TimelineSegment, type TimelineSpan, type TimelineStop } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { meanLapMs } from './people.ts'
import type { Settings } from './settings.ts'

export function plannedSegments(ground: Ground, settings: Settings): readonly Segment[] {
  return ground.timeline.segments.map((segment) => segmentFor(segment, ground, settings))
}

function segmentFor(segment: TimelineSegment, ground: Ground, settings: Settings): Segment {
  const { id, after, lane } = segment
  const lengthMs = lengthOf(segment, ground)
  const untilMs = cameToMs(segment, ground)
  const inside = (ms: number) => ms > 0 && ms < lengthMs
  const { stopEveryMs, changeEveryMs } = settings
  const isAhead = untilMs < lengthMs && lane !== 'sitOut'
  return {
    ...{ id, after, lengthMs, startsAt: startOf(segment, { lengthMs, untilMs }, ground) },
    ...(lane === undefined || lane === 'notDrawnYet' ? {} : { lane }),
    stops: stopsIn(segment, ground, settings).filter(({ atMs }) => inside(atMs)),
    ...(stopEveryMs !== undefined && isAhead ? { gridMs: stopEveryMs } : {}),
    ...(changeEveryMs !== undefined && untilMs < lengthMs
      ? { cutsMs: multiplesOf(changeEveryMs, untilMs, lengthMs) }
      : {}),
    ...(untilMs > 0 ? { past: { untilMs, spans: racedIn(segment, ground, untilMs) } } : {}),
  }
}

/** On the race clock: 0 while a segment is ahead, its length once it is over. */
export function cameToMs(segment: TimelineSegment, ground: Ground): number {
  if (!ground.isRace) return 0
  if (segment.over) return lengthOf(segment, ground)
  const run = ground.state.raceControl.runs.filter((one) => one.segment === segment.id).at(-1)
  if (!run || run.greenAt !== segment.startsAt) return 0
  return Math.min(lengthOf(segment, ground), clockAt(run, ground.now).clockMs)
}

/** One counted in laps is about as long as they take at the crew's pace; one that is over, as it was. */
export function lengthOf(
  { id, lengthMs, over, ...segment }: TimelineSegment,
  ground: Ground,
): number {
  if (lengthMs !== undefined) return lengthMs
  const raced = ground.timeline.spans.filter((span) => span.done && span.segment === id)
  const reachedMs = raced.reduce((most, { toMs }) => Math.max(most, toMs), 0)
  if (over) return reachedMs
  const item = ground.regulations.programme.find((one) => one.id === id)
  const laps = item?.kind === 'segment' && item.length.by === 'laps' ? item.length.laps : 0
  return Math.max(laps * meanLapMs(ground), reachedMs, (segment.endsAt ?? 0) - segment.startsAt)
}

/**
 * The planner's race clock runs on with time, the race's stands at times. What is still to come lies where it will;
 * what is over ends when it ended, so that rest after it is never taken for longer than it was.
 */
function startOf(
  { startsAt, endsAt, over }: TimelineSegment,
  { lengthMs, untilMs }: { readonly lengthMs: number; readonly untilMs: number },
  { now }: Ground,
): number {
  if (over) return (endsAt ?? startsAt + lengthMs) - lengthMs
  return untilMs > 0 ? now - untilMs : startsAt
}

function racedIn(segment: TimelineSegment, { timeline }: Ground, untilMs: number): readonly Span[] {
  return timeline.spans.flatMap((span): readonly Span[] => {
    if (!span.done || span.segment !== segment.id || span.toAt <= segment.startsAt) return []
    const clipped = { ...span, toMs: Math.min(span.toMs, untilMs) }
    return clipped.fromMs < clipped.toMs ? dutyOf(clipped) : []
  })
}

/** Off duty is none of the planner's. */
export function dutyOf(span: TimelineSpan): readonly Span[] {
  const { person, duty, segment, fromMs, toMs, post } = span
  if (duty === 'offDuty') return []
  const where = post === undefined ? {} : { post }
  return [{ person, duty, segment, fromMs, toMs, ...where }]
}

/** Stops made; and of those planned all, or where stops are chosen what the captain keeps. */
function stopsIn(
  segment: TimelineSegment,
  { timeline, plan }: Ground,
  { stopEveryMs }: Settings,
): readonly GivenStop[] {
  const isKept = ({ id, mandatory }: TimelineStop) =>
    !mandatory || plan.stops.some((stop) => stop.id === id && stop.pinned === true)
  return timeline.stops
    .filter((stop) => stop.segment === segment.id)
    .filter((stop) => stop.done || stopEveryMs === undefined || isKept(stop))
    .map(({ id, atMs, mandatory, tasks: [task] }) => ({
      ...{ id, atMs, mandatory },
      ...(task === undefined ? {} : { task }),
    }))
}

function multiplesOf(everyMs: number, afterMs: number, beforeMs: number): readonly number[] {
  const first = Math.floor(afterMs / everyMs) + 1
  const count = Math.max(0, Math.ceil(beforeMs / everyMs) - first)
  return Array.from({ length: count }, (_, place) => (first + place) * everyMs)
}
