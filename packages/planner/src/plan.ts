/** The rotation worked out: the run model of a mixed-integer program, over slots between stops. */
import { answerOf, type Answer } from './answer/answer.ts'
import { isLong, planLong } from './chosen.ts'
import type { SolveOptions } from './linear/solve.ts'
import { solveInTurn } from './in-turn.ts'
import { faultsOf } from './problem/faults.ts'
import type { Problem } from './problem/problem.ts'
import { build } from './rotation/build.ts'

/** Never throws for what is wrong with the problem. Wishes and shares give way to rules; rules never do. */
export function plan(problem: Problem, options: SolveOptions): Answer {
  const faults = faultsOf(problem)
  if (faults.length > 0) return { kind: 'faulty', faults }
  if (isLong(problem)) return planLong(problem, options)
  const rotation = build(problem)
  return answerOf(rotation, solveInTurn(rotation, options))
}
