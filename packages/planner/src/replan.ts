/** Worked out again around what was already driven: once as calm as can be, once for the most laps. */
import type { Answer, Planned } from './answer/answer.ts'
import type { SolveOptions } from './linear/solve.ts'
import { plan } from './plan.ts'
import type { Previous, Problem, Span } from './problem/problem.ts'

export interface Replanned {
  readonly fewestChanges: Answer
  readonly mostLaps: Answer
}

/** So dear that no lap is worth a change: more than anybody gains by one. */
const NO_LAP_IS_WORTH_IT = 100

/** The problem carries what was raced in its segments; `spans` is the plan so far. */
export function replan(
  problem: Problem,
  { spans, sameWithinMs }: Omit<Previous, 'changeLaps'>,
  options: SolveOptions,
): Replanned {
  const { previous: _, ...fresh } = problem
  const calm = { spans, sameWithinMs, changeLaps: NO_LAP_IS_WORTH_IT }
  return {
    fewestChanges: plan({ ...fresh, previous: calm }, options),
    mostLaps: plan(fresh, options),
  }
}

/** Spans that were not there before, whole or cut where the past ends. */
export function changedSpans(
  problem: Problem,
  answer: Pick<Planned, 'spans'>,
  { spans, sameWithinMs }: Omit<Previous, 'changeLaps'>,
): readonly Span[] {
  const nows = new Map(problem.segments.map(({ id, past }) => [id, past?.untilMs ?? 0]))
  return answer.spans.filter((span) => {
    const nowMs = nows.get(span.segment) ?? 0
    return !spans.some(
      (one) =>
        one.person === span.person &&
        one.duty === span.duty &&
        one.post === span.post &&
        one.segment === span.segment &&
        Math.abs(Math.max(one.fromMs, nowMs) - Math.max(span.fromMs, nowMs)) <= sameWithinMs &&
        Math.abs(one.toMs - span.toMs) <= sameWithinMs,
    )
  })
}
