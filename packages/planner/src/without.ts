/** What a rule, a pin or a wish costs: taken away, and worked out again. */
import type { Answer } from './answer/answer.ts'
import type { SolveOptions } from './linear/solve.ts'
import { plan } from './plan.ts'
import type { Problem } from './problem/problem.ts'

export interface Costs {
  readonly ids: readonly string[]
  /** The rotation without them. */
  readonly answer: Answer
  /** More worth without them, at least and at most, as far apart as both answers are from their bounds. */
  readonly laps?: readonly [least: number, most: number]
  /** Laps more on the track alone: what a wish costs that is kept. */
  readonly trackLaps?: number
}

export function without(problem: Problem, ids: readonly string[]): Problem {
  const stays = ({ id }: { id: string }) => !ids.includes(id)
  return {
    ...problem,
    rules: problem.rules.filter(stays),
    wishes: problem.wishes.filter(stays),
    pins: problem.pins.filter(stays),
  }
}

/** What these cost together, against an answer that keeps them. */
export function costOf(
  problem: Problem,
  { ids, kept }: { readonly ids: readonly string[]; readonly kept: Answer },
  options: SolveOptions,
): Costs {
  const answer = plan(without(problem, ids), options)
  if (answer.kind !== 'planned' || kept.kind !== 'planned') return { ids, answer }
  const least = Math.max(0, answer.worthLaps - kept.boundLaps)
  const most = Math.max(0, answer.boundLaps - kept.worthLaps)
  const trackLaps = answer.expected.laps - kept.expected.laps
  return { ids, answer, laps: [least, most], trackLaps }
}
