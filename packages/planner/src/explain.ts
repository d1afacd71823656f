/**
 * Why there is no rotation: first the fewest demands without which there is one, then a smallest set that collides.
 * Demands are rules and pins, by their ids; what always holds (one driver, nobody in two places, who is there) is none.
 *
 * Elastic rows: each demand has a yes or no for being given up, which frees all its rows; as few as can be are. Then
 * deletion filtering (Chinneck & Dravnieks 1991, ORSA J. Computing 3, 157–168): a demand whose absence leaves the rest
 * impossible is not needed for the collision. Linear relaxations come first: where they are impossible so is the rest.
 */
import { ModelBuilder, reachOf, type LinearModel, type Row } from './linear/model.ts'
import { dataOf, run, solve, type SolveOptions } from './linear/solve.ts'
import { isOn } from './answer/read.ts'
import { faultsOf } from './problem/faults.ts'
import type { Problem } from './problem/problem.ts'
import { build } from './rotation/build.ts'
import type { Faulty, Stopped } from './answer/answer.ts'

export type Why = Possible | Faulty | Stopped | Collision

export interface Possible {
  readonly kind: 'possible'
}

export interface Collision {
  readonly kind: 'collision'
  /** Without these there is a rotation, and without fewer there is none. Empty where giving up everything is not enough. */
  readonly giveUp: readonly string[]
  /** These cannot hold together, and without any one of them the others can. */
  readonly collide: readonly string[]
}

export function explain(problem: Problem, options: SolveOptions): Why {
  const faults = faultsOf(problem)
  if (faults.length > 0) return { kind: 'faulty', faults }
  const { model } = build(problem, true)
  const elastic = solve(elasticOf(model), { ...options, gapLaps: 0.9 })
  if (elastic.status === 'infeasible') return { kind: 'collision', giveUp: [], collide: [] }
  if (!elastic.values) return { kind: 'stopped' }
  const { values } = elastic
  const giveUp = tagsOf(model).filter((_, place) => isOn(values, model.columns.length + place))
  if (giveUp.length === 0) return { kind: 'possible' }
  const collide = smallest(model, giveUp, options)
  const inOrder = (ids: readonly string[]) =>
    [...problem.rules, ...problem.pins].map(({ id }) => id).filter((id) => ids.includes(id))
  if (!collide) return { kind: 'stopped' }
  return { kind: 'collision', giveUp: inOrder(giveUp), collide: inOrder(collide) }
}

function tagsOf({ rows }: LinearModel): readonly string[] {
  return [...new Set(rows.flatMap(({ tag }) => (tag === undefined ? [] : [tag])))]
}

/** One more column a tag, in the order of the tags; only giving up costs. */
function elasticOf(model: LinearModel): LinearModel {
  const elastic = new ModelBuilder()
  for (const column of model.columns) elastic.column({ ...column, cost: 0 })
  const givenUp = new Map(tagsOf(model).map((tag) => [tag, elastic.column({ cost: -1 })]))
  for (const row of model.rows) {
    const column = row.tag === undefined ? undefined : givenUp.get(row.tag)
    if (column === undefined) elastic.row(row.terms, { atLeast: row.lower, atMost: row.upper })
    else addElastic(elastic, row, column)
  }
  return elastic
}

function addElastic(elastic: ModelBuilder, { terms, lower, upper }: Row, column: number): void {
  const [least, most] = reachOf(elastic.columns, terms)
  const wide = (reach: number) => (Number.isFinite(reach) ? reach : Math.sign(reach) * WIDE)
  if (upper < most) elastic.row([...terms, [column, upper - wide(most)]], { atMost: upper })
  if (lower > least) elastic.row([...terms, [column, lower - wide(least)]], { atLeast: lower })
}

/** In minutes: no race is as long. */
const WIDE = 100_000

/** Deletion, those that need not be given up first: what has to be is in every collision. Undefined where stopped. */
function smallest(
  model: LinearModel,
  giveUp: readonly string[],
  options: SolveOptions,
): readonly string[] | undefined {
  const check = checkerOf(model, options)
  try {
    const tags = tagsOf(model)
    let kept = new Set(tags)
    const inOrder = [...tags.filter((tag) => !giveUp.includes(tag)), ...giveUp]
    for (const isLinear of [true, false]) {
      if (isLinear && check.isPossible(kept, true)) continue
      for (const tag of inOrder.filter((one) => kept.has(one))) {
        if (options.shouldStop?.()) return undefined
        const without = new Set([...kept].filter((one) => one !== tag))
        if (!check.isPossible(without, isLinear)) kept = without
      }
    }
    return tags.filter((tag) => kept.has(tag))
  } finally {
    check.dispose()
  }
}

interface Checker {
  readonly isPossible: (tags: ReadonlySet<string>, isLinear: boolean) => boolean
  readonly dispose: () => void
}

/** One model each for the relaxation and the whole, whose tagged rows are freed and held again. */
function checkerOf(model: LinearModel, options: SolveOptions): Checker {
  const { solver } = options
  const bare = { columns: model.columns.map((one) => ({ ...one, cost: 0 })), rows: model.rows }
  const whole = solver.createModel(dataOf(bare, solver))
  const relaxed = solver.createModel({ ...dataOf(bare, solver), integrality: undefined })
  for (const native of [whole, relaxed])
    native.options.set({ output_flag: true, log_to_console: false })
  const { infinity } = solver
  return {
    isPossible: (tags, isLinear) => {
      const native = isLinear ? relaxed : whole
      model.rows.forEach(({ tag, lower, upper }, row) => {
        if (tag === undefined) return
        const holds = tags.has(tag)
        const [least, most] = holds ? [lower, upper] : [-infinity, infinity]
        native.changeRowBounds(row, Math.max(least, -infinity), Math.min(most, infinity))
      })
      return run(native, options, isLinear).status !== 'infeasible'
    },
    dispose: () => {
      whole.dispose()
      relaxed.dispose()
    },
  }
}
