/** Hands a model to HiGHS (Huangfu & Hall 2018, Math. Prog. Comp. 10, 119–142) and reads back what it found. */
import type { Highs, Model, ModelData } from 'highs'
import { inMemory } from './memory.ts'
import type { LinearModel } from './model.ts'

/** Where the solver stands, in laps. */
export interface Progress {
  /** The best found so far; undefined while there is none. */
  readonly incumbentLaps?: number
  /** No plan can be better than this. */
  readonly boundLaps: number
}

export interface SolveOptions {
  readonly solver: Highs
  /** Good enough: so close to the bound, in laps. */
  readonly gapLaps?: number
  /** Of each solve, as the solver counts it; what it then has is not repeatable. */
  readonly limitSeconds?: number
  readonly onProgress?: (progress: Progress) => void
  /** Asked many times a second while it works. */
  readonly shouldStop?: () => boolean
}

export interface SearchOptions extends SolveOptions {
  /** Values of a plan that is known already. */
  readonly start?: Float64Array
  readonly presolve?: Presolve
}

/** `quick`: without setting one column after the other to see what follows. */
type Presolve = 'off' | 'choose' | 'quick'

/** The solver's rule 15 of presolve, probing, in its mask of rules that are off. */
const PROBING = 1 << 15

export interface Solved {
  /** `stopped`: by a limit, a cancel or for want of memory, with or without values. */
  readonly status: 'optimal' | 'stopped' | 'infeasible'
  readonly values?: Float64Array
  readonly objective: number
  readonly bound: number
}

/** To a hundredth of a lap: what is closer to the bound counts as proved. */
export const PROVED_WITHIN_LAPS = 0.01

/** As it is, unless it says otherwise. */
export function solve(
  model: LinearModel,
  { start, presolve = 'off', ...options }: SearchOptions,
): Solved {
  const { solver, gapLaps = PROVED_WITHIN_LAPS, limitSeconds } = options
  const search = () =>
    solver.withModel(dataOf(model, solver), (native) => {
      native.options.set({
        // The callbacks stay silent without it.
        ...{ output_flag: true, log_to_console: false },
        presolve: presolve === 'off' ? 'off' : 'choose',
        presolve_rule_off: presolve === 'quick' ? PROBING : 0,
        // One per cent of a day's laps is a stint: the gap is counted in laps.
        ...{ mip_rel_gap: 0, mip_abs_gap: gapLaps },
        ...(limitSeconds === undefined ? {} : { time_limit: limitSeconds }),
      })
      if (start) native.setSolution({ colValue: start })
      return run(native, options)
    })
  return inMemory(search, { status: 'stopped', objective: -Infinity, bound: Infinity })
}

/** Runs a model that is there already; its options are the caller's. A linear one is asked at every step. */
export function run(native: Model, options: SolveOptions, isLinear = false): Solved {
  const { solver, onProgress, shouldStop } = options
  const { callbackType, modelStatus } = solver.constants
  const { simplexInterrupt, ipmInterrupt, mipInterrupt } = callbackType
  const stop = (event: { interrupt(): void }) => {
    if (shouldStop?.()) event.interrupt()
    return undefined
  }
  native.run({
    ...(onProgress && {
      [callbackType.mipLogging]: ({ data }: { data: MipData }) => tell(data, onProgress),
    }),
    ...(shouldStop &&
      (isLinear ? { [simplexInterrupt]: stop, [ipmInterrupt]: stop } : { [mipInterrupt]: stop })),
  })
  const status = native.getModelStatus()
  if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible) {
    return { status: 'infeasible', objective: -Infinity, bound: -Infinity }
  }
  const found = native.info.get('primal_solution_status') === FEASIBLE
  const isOptimal = status === modelStatus.optimal || status === modelStatus.empty
  const objective = found ? native.getObjectiveValue() : -Infinity
  const bound = Number(native.info.get('mip_dual_bound'))
  return {
    status: isOptimal ? 'optimal' : 'stopped',
    objective,
    bound: Number.isFinite(bound) ? Math.max(bound, objective) : isOptimal ? objective : Infinity,
    ...(found ? { values: Float64Array.from(native.getSolution().colValue) } : {}),
  }
}

const FEASIBLE = 2
/** The solver's word for "none yet" is a number this large. */
const NONE_YET = 1e19

interface MipData {
  readonly mip_primal_bound?: number
  readonly mip_dual_bound?: number
}

function tell(data: MipData, onProgress: (progress: Progress) => void): undefined {
  const { mip_primal_bound: found = -Infinity, mip_dual_bound: bound = Infinity } = data
  onProgress({
    ...(Math.abs(found) < NONE_YET ? { incumbentLaps: found } : {}),
    boundLaps: Math.abs(bound) < NONE_YET ? bound : Infinity,
  })
}

export function dataOf(
  { columns, rows, offset = 0 }: LinearModel,
  { constants, infinity }: Highs,
): ModelData {
  const entries = rows.reduce((sum, { terms }) => sum + terms.length, 0)
  const starts = new Int32Array(rows.length + 1)
  const [indices, values] = [new Int32Array(entries), new Float64Array(entries)]
  let at = 0
  rows.forEach(({ terms }, row) => {
    for (const [column, factor] of terms) {
      indices[at] = column
      values[at] = factor
      at += 1
    }
    starts[row + 1] = at
  })
  const { integer, continuous } = constants.variableType
  const bounded = (value: number) =>
    Number.isFinite(value) ? value : value > 0 ? infinity : -infinity
  return {
    numCols: columns.length,
    numRows: rows.length,
    offset,
    sense: constants.objectiveSense.maximize,
    colCost: columns.map(({ cost }) => cost),
    colLower: columns.map(({ lower }) => bounded(lower)),
    colUpper: columns.map(({ upper }) => bounded(upper)),
    rowLower: rows.map(({ lower }) => bounded(lower)),
    rowUpper: rows.map(({ upper }) => bounded(upper)),
    integrality: columns.map(({ whole }) => (whole ? integer : continuous)),
    matrix: {
      ...{ format: 'csr', numRows: rows.length, numCols: columns.length },
      ...{ starts, indices, values },
    },
  }
}
