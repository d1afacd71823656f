/** A driver's spans put together to stints: one unbroken run at the controller each. */
import type { Regulations } from '../documents/rules.ts'
import { ruleValue } from '../rules/index.ts'
import { policyFor } from '../rules/policy-for.ts'
import { known } from '../rules/shape.ts'
import type { Timeline, TimelineSpan } from '../timeline/timeline.ts'
import { cutOut, lengthOf, type Stretch } from './stretches.ts'

export interface Stint extends Stretch {
  readonly spans: readonly TimelineSpan[]
  /** Of its spans: every check names them. */
  readonly spanIds: readonly string[]
  /** What counts as driving, in order. */
  readonly driven: readonly Stretch[]
  readonly drivenMs: number
}

export interface OfWhom {
  /** At the controller, of one person, in order. */
  readonly driving: readonly TimelineSpan[]
  readonly timeline: Timeline
  readonly regulations: Regulations
  readonly holes: readonly Stretch[]
}

/**
 * Spans that follow on without a gap are one stint, unless the rules say that a change with oneself begins a new
 * one. A stint goes on over a lane change, which counts as driving where the rules let the clock run; a break
 * ends it.
 */
export function stintsOf({ driving, timeline, regulations, holes }: OfWhom): readonly Stint[] {
  const begins = known(ruleValue(regulations.rules, 'changeWithOneself')?.begins) === true
  const counts = policyFor(regulations, 'driving', 'laneChange')
  const stints: TimelineSpan[][] = []
  for (const span of driving) {
    const stint = stints.at(-1)
    const before = stint?.at(-1)
    const isChange = begins && before !== undefined && isWithOneself(before, span)
    if (stint && before && !isChange && followsOn(timeline, before, span)) stint.push(span)
    else stints.push([span])
  }
  const overLaneChanges = counts.does === 'runs' && !counts.assumed
  return stints.map((stint) => stintOf(stint, holes, overLaneChanges))
}

/** A span that only goes on over a lane change, or from the race into what is planned, is no change. */
function isWithOneself(before: TimelineSpan, span: TimelineSpan): boolean {
  return before.segment === span.segment && before.done === span.done
}

function stintOf(
  spans: readonly TimelineSpan[],
  holes: readonly Stretch[],
  overLaneChanges: boolean,
): Stint {
  const fromAt = spans[0]?.fromAt ?? 0
  const toAt = spans.reduce((last, span) => Math.max(last, span.toAt), fromAt)
  const pieces = overLaneChanges ? [{ fromAt, toAt }] : apart(spans)
  const driven = pieces.flatMap((piece) => cutOut(piece, holes))
  const spanIds = spans.map(({ id }) => id)
  return { fromAt, toAt, spans, spanIds, driven, drivenMs: lengthOf(driven) }
}

/** Stretches in order of beginning, made to lie apart: spans of one person that overlap by mistake count once. */
export function apart(spans: readonly Stretch[]): readonly Stretch[] {
  const pieces: Stretch[] = []
  for (const { fromAt, toAt } of spans) {
    const last = pieces.at(-1)
    if (last && fromAt <= last.toAt) {
      pieces[pieces.length - 1] = { fromAt: last.fromAt, toAt: Math.max(last.toAt, toAt) }
    } else pieces.push({ fromAt, toAt })
  }
  return pieces
}

/** Whether nobody left between two spans: in one segment, or over a lane change. */
export function followsOn(
  { segments }: Timeline,
  before: TimelineSpan,
  span: TimelineSpan,
): boolean {
  if (before.segment === span.segment) return span.fromAt <= before.toAt
  const place = segments.findIndex(({ id }) => id === span.segment)
  const segment = segments[place]
  const earlier = segments[place - 1]
  if (!segment || earlier?.id !== before.segment || segment.after !== 'laneChange') return false
  const ranOut = earlier.lengthMs === undefined || before.toMs >= earlier.lengthMs || earlier.over
  return ranOut && span.fromMs === 0
}
