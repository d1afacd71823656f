/** The plan read as duties: what it asks of whom, and which of its spans somebody is serving. */
import type { Plan, PlanSpan } from '../documents/plan.ts'
import type { DutySpan, State } from '../fold/state.ts'
import { atOf, clockAt } from './clock-map.ts'
import type { SegmentOutlook } from './programme.ts'

/**
 * The plan's spans of one segment, those of one person and duty that follow each other without a gap as one
 * (it keeps the first one's id), in order of beginning.
 */
export function plannedDuties(plan: Plan | undefined, segment: string): readonly PlanSpan[] {
  const merged: PlanSpan[] = []
  const last = new Map<string, number>()
  const spans = (plan?.spans ?? []).filter((span) => span.segment === segment)
  for (const span of spans.sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs)) {
    const duty = `${span.person} ${span.duty} ${span.duty === 'controller' ? '' : (span.post ?? '')}`
    const place = last.get(duty) ?? merged.length
    const before = merged[place]
    if (before && before.toMs >= span.fromMs) {
      merged[place] = { ...before, toMs: Math.max(before.toMs, span.toMs) }
    } else {
      last.set(duty, merged.length)
      merged.push(span)
    }
  }
  return merged
}

/** The duty the plan gives to whoever has it from `fromMs` on: begun early or late, or stood in for. */
export interface PlannedDuty {
  readonly own?: PlanSpan
  /** Where the plan ends it: its own span, or that of the person stood in for. */
  readonly endsMs?: number
}

/**
 * Finds it by the race clock at which the person began: the span around it; or the next one of that person,
 * where it follows on whatever the plan had then (begun early); or the span of whom the plan had then.
 */
export function plannedDutyOf(
  planned: readonly PlanSpan[],
  duty: Pick<DutySpan, 'person' | 'duty' | 'post'>,
  fromMs: number,
): PlannedDuty {
  const own = planned.find((span) => span.toMs > fromMs && isOfDuty(span, duty))
  if (own && own.fromMs <= fromMs) return { own, endsMs: own.toMs }
  const cover = planned.find(
    (span) =>
      span.fromMs <= fromMs &&
      fromMs < span.toMs &&
      isOfDuty(span, { ...duty, person: span.person }),
  )
  if (own && (!cover || own.fromMs <= cover.toMs)) return { own, endsMs: own.toMs }
  return cover ? { endsMs: cover.toMs } : {}
}

/** The race clock at which a duty began in a run: 0 where the run found the person there. */
export function beganMs(outlook: SegmentOutlook, span: DutySpan): number {
  return outlook.run ? clockAt(outlook.run, Math.max(span.fromAt, outlook.run.greenAt)).clockMs : 0
}

/** Meeting time of a position on a segment's race clock, or about when it will be. */
export function positionAt(outlook: SegmentOutlook, clockMs: number, now: number): number {
  return outlook.run ? atOf(outlook.run, clockMs, now) : outlook.startsAt + clockMs
}

/**
 * Whether what a planned span asks for has come about: its person serves it, or somebody came to that duty
 * at or after its beginning, so that the plan was overtaken.
 */
export function isSettled(
  state: State,
  outlook: SegmentOutlook,
  { span, planned }: { readonly span: PlanSpan; readonly planned: readonly PlanSpan[] },
): boolean {
  return state.people.duties.some((duty) => {
    if (duty.toAt !== undefined || !isOfDuty(span, { ...duty, person: span.person })) return false
    const began = beganMs(outlook, duty)
    if (duty.person === span.person) return plannedDutyOf(planned, duty, began).own?.id === span.id
    return began >= span.fromMs && began > 0
  })
}

function isOfDuty(span: PlanSpan, duty: Pick<DutySpan, 'person' | 'duty' | 'post'>): boolean {
  if (span.person !== duty.person || span.duty !== duty.duty) return false
  return span.duty !== 'post' || span.post === duty.post || !span.post || !duty.post
}
