/** A search that leaves some of a model out, against one of everything. */
import type { Highs } from 'highs'
import { expect } from 'vitest'
import type { LinearModel } from '../linear/model.ts'
import { PROVED_WITHIN_LAPS, solve, type Solved } from '../linear/solve.ts'

/** Over the seeds 1 … 60: finds as much, keeps every row, says no lower bound, and finds nothing where there is nothing. */
export function findsAsMuch(
  modelOf: (seed: number) => LinearModel,
  search: (model: LinearModel) => Solved,
  solver: Highs,
): Readonly<Record<Solved['status'], number>> {
  const outcomes = { optimal: 0, infeasible: 0, stopped: 0 }
  for (let seed = 1; seed <= 60; seed += 1) {
    const model = modelOf(seed)
    const whole = solve(model, { solver })
    const found = search(model)
    const said = ({ status, objective }: Solved) => ({ seed, status, worth: objective.toFixed(3) })
    expect(said(found)).toEqual(said(whole))
    outcomes[found.status] += 1
    if (found.status !== 'optimal') continue
    expect(found.bound).toBeGreaterThanOrEqual(whole.objective - ROUNDING)
    expect(found.bound - found.objective).toBeLessThanOrEqual(PROVED_WITHIN_LAPS + ROUNDING)
    expectKept(model, found.values)
    expect(worthOf(model, found.values)).toBeCloseTo(whole.objective, 3)
  }
  return outcomes
}

const ROUNDING = 1e-6

function expectKept({ rows }: LinearModel, values: ArrayLike<number> = []): void {
  for (const { terms, lower, upper } of rows) {
    const reached = terms.reduce((sum, [at, factor]) => sum + factor * (values[at] ?? NaN), 0)
    expect(reached).toBeGreaterThanOrEqual(lower - 1e-4)
    expect(reached).toBeLessThanOrEqual(upper + 1e-4)
  }
}

function worthOf({ columns }: LinearModel, values: ArrayLike<number> = []): number {
  return columns.reduce((sum, { cost }, at) => sum + cost * (values[at] ?? NaN), 0)
}
