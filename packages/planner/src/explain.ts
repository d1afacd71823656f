/**
 * Why there is no rotation: a smallest set of demands that collides, and the fewest without which there is one.
 * Demands are rules and pins, by their ids; what always holds (one driver, nobody in two places, who is there) is none.
 *
 * The set is found by halving (Junker 2004, QuickXplain, AAAI-04, 167–172), in linear relaxations first: where they are
 * impossible so is the rest. Whatever is given up is in the set, so that each of it is tried alone. Only where no one
 * demand is enough do elastic rows follow (Chinneck & Dravnieks 1991, ORSA J. Computing 3, 157–168): each demand has a
 * yes or no for being given up, which frees all its rows; as few as can be are.
 */
import type { Model } from 'highs'
import { inMemory } from './linear/memory.ts'
import { ModelBuilder, reachOf, type LinearModel, type Row } from './linear/model.ts'
import { dataOf, run, solve, type SolveOptions } from './linear/solve.ts'
import { isOn } from './answer/read.ts'
import { faultsOf } from './problem/faults.ts'
import type { Problem } from './problem/problem.ts'
import { build } from './rotation/build.ts'
import { without } from './without.ts'
import type { Faulty, Stopped } from './answer/answer.ts'

export type Why = Possible | Faulty | Stopped | Collision

export interface Possible {
  readonly kind: 'possible'
}

export interface Collision {
  readonly kind: 'collision'
  /** Without these there is a rotation: as few as were found. Empty where giving up everything is not enough. */
  readonly giveUp: readonly string[]
  /** These cannot hold together, and without any one of them the others can. */
  readonly collide: readonly string[]
}

export function explain(problem: Problem, options: SolveOptions): Why {
  const faults = faultsOf(problem)
  if (faults.length > 0) return { kind: 'faulty', faults }
  return inMemory<Why>(() => explained(problem, options), { kind: 'stopped' })
}

function explained(problem: Problem, options: SolveOptions): Why {
  const { model } = build(problem, true)
  const check = checkerOf(problem, model, options)
  try {
    const collide = smallest(tagsOf(model), check)
    if (check.hasStopped()) return { kind: 'stopped' }
    if (!collide) return { kind: 'possible' }
    const giveUp = collide.length === 0 ? [] : fewest(model, collide, { check, options, problem })
    if (!giveUp || check.hasStopped()) return { kind: 'stopped' }
    const inOrder = (ids: readonly string[]) =>
      [...problem.rules, ...problem.pins].map(({ id }) => id).filter((id) => ids.includes(id))
    return { kind: 'collision', giveUp: inOrder(giveUp), collide: inOrder(collide) }
  } finally {
    check.dispose()
  }
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

/** Undefined where nothing collides; empty where it is impossible without any demand. */
function smallest(tags: readonly string[], check: Checker): readonly string[] | undefined {
  const isLinear = !check.isPossible(tags, true)
  const kept = isLinear ? halved([], tags, (some) => check.isPossible(some, true)) : tags
  if (!check.isPossible(kept, false))
    return halved([], kept, (some) => check.isPossible(some, false))
  // Freed rows leave what one rule does to another's: a relief that comes early cuts a rest.
  return isLinear ? halved([], tags, (some) => check.isPossible(some, false)) : undefined
}

type IsPossible = (tags: readonly string[]) => boolean

/** Of some tags that are impossible with the others those that are needed for it. */
function halved(
  others: readonly string[],
  some: readonly string[],
  isPossible: IsPossible,
): readonly string[] {
  if (some.length === 0 || !isPossible(others)) return []
  if (some.length === 1) return some
  const middle = Math.floor(some.length / 2)
  const [first, second] = [some.slice(0, middle), some.slice(middle)]
  const ofSecond = halved([...others, ...first], second, isPossible)
  return [...halved([...others, ...ofSecond], first, isPossible), ...ofSecond]
}

interface Means {
  readonly problem: Problem
  readonly check: Checker
  readonly options: SolveOptions
}

/** Undefined where it was stopped. */
function fewest(
  model: LinearModel,
  collide: readonly string[],
  { check, options, problem }: Means,
): readonly string[] | undefined {
  const tags = tagsOf(model)
  for (const one of collide) {
    const others = tags.filter((tag) => tag !== one)
    if (check.isPossible(others, true) && check.isPossible(others, false)) return [one]
  }
  const { status, values } = solve(elasticOf(model), { ...options, gapLaps: 0.9 })
  if (status === 'infeasible') return []
  if (status !== 'optimal' || !values) return undefined
  const found = tags.filter((_, place) => isOn(values, model.columns.length + place))
  return andWhatFollows(problem, found, options)
}

/** Freeing its rows is not all that giving a rule up does: what is left is asked again, and what it takes is added. */
function andWhatFollows(
  problem: Problem,
  giveUp: readonly string[],
  options: SolveOptions,
): readonly string[] | undefined {
  const left = explain(without(problem, giveUp), options)
  if (left.kind === 'possible') return giveUp
  if (left.kind !== 'collision') return undefined
  return left.giveUp.length === 0 ? [] : [...giveUp, ...left.giveUp]
}

interface Checker {
  readonly isPossible: (tags: readonly string[], isLinear: boolean) => boolean
  /** Something was not worked out to its end: what was found since then is nothing to go by. */
  readonly hasStopped: () => boolean
  readonly dispose: () => void
}

/** The relaxation is one model, whose tagged rows are freed and held again; the whole is built without what it lacks. */
function checkerOf(problem: Problem, model: LinearModel, options: SolveOptions): Checker {
  const { solver } = options
  const relaxed = solver.createModel({ ...dataOf(bare(model), solver), integrality: undefined })
  relaxed.options.set({ output_flag: true, log_to_console: false })
  let isStopped = false
  const isLinearPossible: IsPossible = (tags) => {
    holdOnly(relaxed, model, { tags, infinity: solver.infinity })
    return run(relaxed, options, true).status !== 'infeasible'
  }
  const isWholePossible: IsPossible = (tags) => {
    const gone = tagsOf(model).filter((tag) => !tags.includes(tag))
    const { status, values } = solve(bare(build(without(problem, gone)).model), options)
    if (status === 'stopped' && !values) isStopped = true
    return status !== 'infeasible'
  }
  return {
    isPossible: (tags, isLinear) => {
      isStopped ||= options.shouldStop?.() ?? false
      return isStopped || (isLinear ? isLinearPossible : isWholePossible)(tags)
    },
    hasStopped: () => isStopped,
    dispose: () => relaxed.dispose(),
  }
}

function bare({ columns, rows }: LinearModel): LinearModel {
  return { columns: columns.map((one) => ({ ...one, cost: 0 })), rows }
}

function holdOnly(
  native: Model,
  { rows }: LinearModel,
  { tags, infinity }: { tags: readonly string[]; infinity: number },
): void {
  rows.forEach(({ tag, lower, upper }, row) => {
    if (tag === undefined) return
    const [least, most] = tags.includes(tag) ? [lower, upper] : [-infinity, infinity]
    native.changeRowBounds(row, Math.max(least, -infinity), Math.min(most, infinity))
  })
}
