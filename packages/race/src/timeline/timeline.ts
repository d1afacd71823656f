/**
 * Who has which duty between which stops. A plan is one, the race so far is one, and what was raced followed by
 * what is still planned is a third: rules judge them, the ribbon draws them, all alike.
 */
import { inForce } from '../fold/in-force.ts'
import type { Duty } from '../entry/scalars.ts'
import type { State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { runsNotDriven } from '../time/runs-that-count.ts'
import { timelineSegments, type TimelineSegment } from './segments.ts'
import { shortened, type Shortened } from './shortened.ts'
import { byBeginning, plannedSpans, racedSpans } from './spans.ts'
import { madeStops, plannedStops, type TimelineStop } from './stops.ts'

/** On the segment's race clock (`…Ms`) and in meeting time (`…At`, about where it is still to come). */
export interface TimelineSpan {
  /** The plan's line; in the race the entry, the person and the run. */
  readonly id: string
  readonly person: string
  readonly duty: Duty
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
  readonly fromAt: number
  readonly toAt: number
  readonly post?: string
  readonly lane?: number
  /** It was so; otherwise it is meant to be. */
  readonly done: boolean
}

export interface Timeline {
  readonly segments: readonly TimelineSegment[]
  /** In order of beginning. */
  readonly spans: readonly TimelineSpan[]
  readonly stops: readonly TimelineStop[]
  /** Whether it reaches to the end of the race: what is owed at the end can only be missed by one that does. */
  readonly isWhole: boolean
  /** Stretches of meeting time in which driving counted for nobody: held under an interruption, as was the rule then, or in a run that does not count. */
  readonly notDriving: readonly { readonly fromAt: number; readonly toAt: number }[]
  /** Where race control made the race shorter than the programme has it. */
  readonly shortened?: Shortened
}

/** The plan in force, whatever was raced; times ahead are about. Segments the rules lack are left out. */
export function planTimeline(state: State, now: number): Timeline {
  return {
    segments: timelineSegments(state, now),
    spans: plannedSpans(state, now),
    stops: plannedStops(state, now),
    isWhole: true,
    notDriving: [],
    ...lengthOf(state, now),
  }
}

/** What was raced up to `now`, one span a run. */
export function raceTimeline(state: State, now: number): Timeline {
  const segments = timelineSegments(state, now)
  return {
    segments,
    spans: racedSpans(state, now),
    stops: madeStops(state, now),
    isWhole: segments.length > 0 && segments.every(({ over }) => over),
    notDriving: notDriving(state, now),
    ...lengthOf(state, now),
  }
}

/**
 * What was raced, and from `now` on the plan. A planned span that has begun is cut at `now`; a stop the plan has
 * before `now` that was not made is not made any more.
 */
export function continuedTimeline(state: State, now: number): Timeline {
  const race = raceTimeline(state, now)
  const over = new Set(race.segments.filter((one) => one.over).map(({ id }) => id))
  const ahead = plannedSpans(state, now)
    .filter((span) => span.toAt > now && !over.has(span.segment))
    .map((span) => fromNow(state, span, now))
  const served = new Set(race.stops.map(({ planned }) => planned))
  const stops = plannedStops(state, now).filter(
    (stop) => stop.at >= now && !over.has(stop.segment) && !served.has(stop.id),
  )
  return {
    segments: race.segments,
    spans: [...race.spans, ...ahead].sort(byBeginning),
    stops: [...race.stops, ...stops],
    isWhole: inForce(state, 'plan', now) !== undefined || race.isWhole,
    notDriving: race.notDriving,
    ...(race.shortened ? { shortened: race.shortened } : {}),
  }
}

function lengthOf(state: State, now: number): Pick<Timeline, 'shortened'> {
  const shorter = shortened(state, now)
  return shorter ? { shortened: shorter } : {}
}

function notDriving(state: State, now: number): Timeline['notDriving'] {
  const held = state.raceControl.interruptions
    .filter(({ policy }) => policy.driving === 'holds')
    .map(({ fromAt, toAt = now }) => ({ fromAt, toAt }))
  return [...held, ...runsNotDriven(state, now)]
}

function fromNow(state: State, span: TimelineSpan, now: number): TimelineSpan {
  if (span.fromAt >= now) return span
  const run = state.raceControl.runs.filter((one) => one.segment === span.segment).at(-1)
  const fromMs = run
    ? Math.min(span.toMs, Math.max(span.fromMs, clockAt(run, now).clockMs))
    : span.fromMs
  return { ...span, fromMs, fromAt: now }
}
