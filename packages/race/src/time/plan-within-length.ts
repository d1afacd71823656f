/** What a segment made shorter or longer by race control makes of a plan that was there before. */
import type { Plan, PlanSpan } from '../documents/plan.ts'
import { adoptionInForce, inForce } from '../fold/in-force.ts'
import type { Adoption, State } from '../fold/state.ts'

/** How long the plan took a segment to be, where that is known, and how long it is. */
interface Changed {
  readonly fromMs?: number
  readonly toMs: number
}

/**
 * Only changes said while this version was in force: one adopted later knows them, and stands as it is. What lies
 * beyond the new end falls away, and whoever had a duty to the old end has it to the new one.
 */
export function withinLength(plan: Plan, state: State, adoption: Adoption<'plan'>): Plan {
  const changed = changedLengths(state, adoption)
  if (changed.size === 0) return plan
  return {
    ...plan,
    spans: plan.spans.flatMap((span) => {
      const length = changed.get(span.segment)
      return length ? cutTo(span, length) : [span]
    }),
    stops: plan.stops.filter(
      ({ segment, atMs }) => atMs < (changed.get(segment)?.toMs ?? Infinity),
    ),
  }
}

function changedLengths(state: State, adoption: Adoption<'plan'>): ReadonlyMap<string, Changed> {
  const before = new Map<string, number>()
  const changed = new Map<string, Changed>()
  for (const { at, body } of state.raceControl.segmentChanges) {
    const { segment, change } = body
    if (change.what !== 'length') continue
    if (adoptionInForce(state, 'plan', at) === adoption) {
      const fromMs =
        changed.get(segment)?.fromMs ?? before.get(segment) ?? ruledMs(state, segment, at)
      changed.set(segment, { fromMs, toMs: change.lengthMs })
    } else before.set(segment, change.lengthMs)
  }
  return changed
}

function ruledMs(state: State, segment: string, at: number): number | undefined {
  const item = inForce(state, 'rules', at)?.programme.find(({ id }) => id === segment)
  return item?.kind === 'segment' && item.length.by === 'time' ? item.length.lengthMs : undefined
}

function cutTo(span: PlanSpan, { fromMs, toMs }: Changed): readonly PlanSpan[] {
  if (span.fromMs >= toMs) return []
  const isToTheEnd = span.toMs === fromMs
  return span.toMs > toMs || isToTheEnd ? [{ ...span, toMs }] : [span]
}
