import type { PlanSpan } from '../documents/plan.ts'
import type { DutySpan, State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { isSettled, plannedDuties, positionAt } from '../time/plan-spans.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { segmentsOf } from '../time/programme.ts'

/** The duty this person has now. */
export function dutyOf(state: State, person: string): DutySpan | undefined {
  return state.people.duties.find((span) => span.toAt === undefined && span.person === person)
}

/** Every duty that somebody has now, off duty included, in order of beginning. */
export function dutiesNow(state: State): readonly DutySpan[] {
  return state.people.duties.filter((span) => span.toAt === undefined)
}

/** Whether a planned span's person already stands where it wants them. */
export function isThereAlready(state: State, span: PlanSpan): boolean {
  const duty = dutyOf(state, span.person)
  return duty?.duty === span.duty && duty.post === span.post
}

export interface NextDuty {
  /** Spans of the same duty that follow each other without a gap count as one: this is it, as one. */
  readonly span: PlanSpan
  readonly startsAt: number
  readonly endsAt: number
}

/**
 * The person's next duty by the plan, from the running segment on; one that is overdue counts until somebody
 * took it. Being off duty is none. Undefined where the plan has nothing more for this person.
 */
export function nextDutyOf(state: State, person: string, now: number): NextDuty | undefined {
  const plan = planInForce(state, now)
  for (const outlook of segmentsOf(state, now)) {
    if (outlook.state !== 'ahead' && outlook.state !== 'running') continue
    const planned = plannedDuties(plan, outlook.item.id)
    const clockMs = outlook.run ? clockAt(outlook.run, now).clockMs : 0
    const span = planned.find(
      (one) =>
        one.person === person &&
        one.duty !== 'offDuty' &&
        one.toMs > clockMs &&
        !(outlook.run && isSettled(state, outlook, { span: one, planned })),
    )
    if (!span) continue
    const startsAt = positionAt(outlook, span.fromMs, now)
    return { span, startsAt, endsAt: positionAt(outlook, span.toMs, now) }
  }
  return undefined
}
