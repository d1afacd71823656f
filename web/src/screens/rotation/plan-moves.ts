/**
 * What a finger or a key does to a plan. Every one takes a plan and answers another; where it cannot be done the
 * same plan comes back. A boundary that two spans of one duty share moves as one: it is a handover.
 */
import type { Duty, Plan, PlanSpan, PlanStop } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'
import { MINUTE_MS, type Position } from './strip.ts'

/** The shortest span a drag leaves: common practice, no source. */
const SHORTEST_MS = MINUTE_MS

export type Edge = 'fromMs' | 'toMs'

export interface EdgeMove {
  readonly id: string
  readonly edge: Edge
  readonly toMs: number
  /** How far the segment goes. */
  readonly lengthMs: number
}

/** Moves one end of a span, and the end of the one it hands over to or takes over from. */
export function moveEdge(plan: Plan, { id, edge, toMs, lengthMs }: EdgeMove): Plan {
  const span = plan.spans.find((one) => one.id === id)
  if (!span) return plan
  const neighbour = touching(plan, span, edge)
  const [low, high] =
    edge === 'fromMs'
      ? [neighbour ? neighbour.fromMs + SHORTEST_MS : 0, span.toMs - SHORTEST_MS]
      : [span.fromMs + SHORTEST_MS, neighbour ? neighbour.toMs - SHORTEST_MS : lengthMs]
  const at = Math.max(low, Math.min(high, toMs))
  const other: Edge = edge === 'fromMs' ? 'toMs' : 'fromMs'
  return withSpans(plan, (one) => {
    if (one.id === id) return { ...one, [edge]: at }
    return one.id === neighbour?.id ? { ...one, [other]: at } : one
  })
}

export interface SpanMove {
  readonly id: string
  readonly person: string
  readonly to: Position
  readonly lengthMs: number
}

/** Moves a whole span, kept inside its segment, to another time, person, or both. */
export function moveSpan(plan: Plan, { id, person, to, lengthMs }: SpanMove): Plan {
  return withSpans(plan, (one) => {
    if (one.id !== id) return one
    const lasts = Math.min(one.toMs - one.fromMs, lengthMs)
    const fromMs = Math.max(0, Math.min(to.clockMs, lengthMs - lasts))
    return { ...one, person, segment: to.segment, fromMs, toMs: fromMs + lasts }
  })
}

export function splitSpan(plan: Plan, id: string, atMs: number): Plan {
  const span = plan.spans.find((one) => one.id === id)
  if (!span || atMs <= span.fromMs || atMs >= span.toMs) return plan
  const second = { ...span, id: freshId('p', plan.spans), fromMs: atMs }
  const spans = plan.spans.flatMap((one) =>
    one.id === id ? [{ ...one, toMs: atMs }, second] : [one],
  )
  return { ...plan, spans }
}

/** The two people change places: each does what the other was to do. */
export function swapSpans(plan: Plan, first: string, second: string): Plan {
  const one = plan.spans.find(({ id }) => id === first)
  const other = plan.spans.find(({ id }) => id === second)
  if (!one || !other) return plan
  return withSpans(plan, (span) => {
    if (span.id === first) return { ...span, person: other.person }
    return span.id === second ? { ...span, person: one.person } : span
  })
}

export interface NewSpan {
  readonly person: string
  readonly duty: Duty
  readonly at: Position
  readonly lengthMs: number
}

/** As long as half an hour, up to the next one of this duty or the segment's end. */
export function addSpanAt(plan: Plan, { person, duty, at, lengthMs }: NewSpan): Plan {
  const { segment, clockMs } = at
  const next = plan.spans
    .filter((one) => one.segment === segment && one.duty === duty && one.fromMs > clockMs)
    .reduce((least, { fromMs }) => Math.min(least, fromMs), lengthMs)
  const toMs = Math.min(clockMs + 30 * MINUTE_MS, next, lengthMs)
  if (toMs - clockMs < SHORTEST_MS) return plan
  const span: PlanSpan = {
    id: freshId('p', plan.spans),
    person,
    duty,
    segment,
    fromMs: clockMs,
    toMs,
  }
  return { ...plan, spans: [...plan.spans, span] }
}

export function changeSpan(plan: Plan, id: string, change: Partial<PlanSpan>): Plan {
  return withSpans(plan, (one) => (one.id === id ? { ...one, ...change } : one))
}

export function removeSpan(plan: Plan, id: string): Plan {
  return { ...plan, spans: plan.spans.filter((one) => one.id !== id) }
}

export function addStopAt(plan: Plan, { segment, clockMs }: Position, mandatory: boolean): Plan {
  const stop: PlanStop = { id: freshId('t', plan.stops), segment, atMs: clockMs, mandatory }
  return { ...plan, stops: [...plan.stops, stop] }
}

export function changeStop(plan: Plan, id: string, change: Partial<PlanStop>): Plan {
  return { ...plan, stops: plan.stops.map((one) => (one.id === id ? { ...one, ...change } : one)) }
}

export function removeStop(plan: Plan, id: string): Plan {
  return { ...plan, stops: plan.stops.filter((one) => one.id !== id) }
}

export function turnPersonKept(plan: Plan, person: string): Plan {
  const { keptPeople = [], ...rest } = plan
  const others = keptPeople.filter((one) => one !== person)
  const kept = others.length < keptPeople.length ? others : [...keptPeople, person]
  return kept.length > 0 ? { ...rest, keptPeople: kept } : rest
}

/** The span of the same duty, and post, that ends where this one begins, or begins where it ends; nobody is relieved of rest. */
function touching(plan: Plan, span: PlanSpan, edge: Edge): PlanSpan | undefined {
  if (span.duty === 'offDuty') return undefined
  const other: Edge = edge === 'fromMs' ? 'toMs' : 'fromMs'
  return plan.spans.find(
    (one) =>
      one.id !== span.id &&
      one.segment === span.segment &&
      one.duty === span.duty &&
      one.post === span.post &&
      one[other] === span[edge],
  )
}

function withSpans(plan: Plan, map: (span: PlanSpan) => PlanSpan): Plan {
  return { ...plan, spans: plan.spans.map(map) }
}
