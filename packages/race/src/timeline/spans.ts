/** The plan's spans, and the race's: the same shape, so that they can be laid side by side. */
import type { DutySpan, SegmentRun, State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { satOut } from '../time/lanes.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { positionAt } from '../time/plan-spans.ts'
import { isGone, segmentsOf } from '../time/programme.ts'
import type { TimelineSpan } from './timeline.ts'

/** Spans of segments that the rules in force at `now` have, in order of beginning; times ahead are about. */
export function plannedSpans(state: State, now: number): readonly TimelineSpan[] {
  const outlooks = segmentsOf(state, now)
  const spans: TimelineSpan[] = []
  for (const span of planInForce(state, now)?.spans ?? []) {
    const outlook = outlooks.find((one) => one.item.id === span.segment)
    if (!outlook || isGone(outlook)) continue
    const { id, person, duty, segment, fromMs, toMs, post, lane } = span
    spans.push({
      ...{ id, person, duty, segment, fromMs, toMs, done: false },
      fromAt: positionAt(outlook, fromMs, now),
      toAt: positionAt(outlook, toMs, now),
      ...(post === undefined ? {} : { post }),
      ...(lane === undefined ? {} : { lane }),
    })
  }
  return spans.sort(byBeginning)
}

/** Duties as they were held while segments ran, one span a run, up to `now`; in a segment sat out nobody drove. */
export function racedSpans(state: State, now: number): readonly TimelineSpan[] {
  const spans: TimelineSpan[] = []
  const isSatOut = satOut(state, now)
  for (const run of state.raceControl.runs) {
    for (const duty of state.people.duties) {
      if (duty.duty === 'controller' && isSatOut(run)) continue
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
    done: true,
    ...(duty.lane === undefined ? {} : { lane: duty.lane }),
    ...(duty.post === undefined ? {} : { post: duty.post }),
  }
}

export function byBeginning(a: TimelineSpan, b: TimelineSpan): number {
  return a.fromAt - b.fromAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
}
