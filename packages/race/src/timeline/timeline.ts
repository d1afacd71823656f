/** The plan as a timeline, and the race so far as one: the same spans, so that they can be laid side by side. */
import { inForce } from '../fold/in-force.ts'
import type { Duty } from '../entry/scalars.ts'
import type { DutySpan, SegmentRun, State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { positionAt } from '../time/plan-spans.ts'
import { segmentsOf } from '../time/programme.ts'

/** Who had, or is to have, which duty from when to when: on the segment's race clock and in meeting time. */
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
}

/** Spans of segments that the rules in force at `now` have, in order of beginning; times ahead are about. */
export function planTimeline(state: State, now: number): readonly TimelineSpan[] {
  const outlooks = segmentsOf(state, now)
  const spans: TimelineSpan[] = []
  for (const span of inForce(state, 'plan', now)?.spans ?? []) {
    const outlook = outlooks.find((one) => one.item.id === span.segment)
    if (!outlook) continue
    const { id, person, duty, segment, fromMs, toMs, post } = span
    spans.push({
      ...{ id, person, duty, segment, fromMs, toMs },
      fromAt: positionAt(outlook, fromMs, now),
      toAt: positionAt(outlook, toMs, now),
      ...(post === undefined ? {} : { post }),
    })
  }
  return spans.sort(byBeginning)
}

/** Duties as they were held while segments ran, one span a run, up to `now`. */
export function raceTimeline(state: State, now: number): readonly TimelineSpan[] {
  const spans: TimelineSpan[] = []
  for (const run of state.raceControl.runs) {
    for (const duty of state.people.duties) {
      const span = pieceOf(run, duty, now)
      if (span) spans.push(span)
    }
  }
  return spans.sort(byBeginning)
}

function pieceOf(run: SegmentRun, duty: DutySpan, now: number): TimelineSpan | undefined {
  const fromAt = Math.max(duty.fromAt, run.greenAt)
  const toAt = Math.min(duty.toAt ?? now, run.endAt ?? now, now)
  if (toAt <= fromAt) return undefined
  return {
    id: `${duty.entry}:${duty.person}:${run.entry}`,
    person: duty.person,
    duty: duty.duty,
    segment: run.segment,
    fromMs: clockAt(run, fromAt).clockMs,
    toMs: clockAt(run, toAt).clockMs,
    fromAt,
    toAt,
    ...(duty.post === undefined ? {} : { post: duty.post }),
  }
}

function byBeginning(a: TimelineSpan, b: TimelineSpan): number {
  return a.fromAt - b.fromAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
}
