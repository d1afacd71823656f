/**
 * Driving first, then the other duties around it. Laps are driven; who stands at the posts hardly moves them. So the
 * best driving is searched as if nobody were needed anywhere else, and the other duties are laid around it. Each by
 * itself has a bound, and no rotation is worth more than both together: only what ties one to the other was left out.
 * Where the two reach that, it is proved; where they do not, the whole is searched. So it is at once where every change
 * to a plan has its price: that holds both together, and leaves few columns to search.
 */
import { solveLean, withoutIncumbents } from './linear/lean.ts'
import { partOf, type Part } from './linear/part.ts'
import { relax } from './linear/relax.ts'
import {
  PROVED_WITHIN_LAPS,
  solve,
  type SearchOptions,
  type Solved,
  type SolveOptions,
} from './linear/solve.ts'
import type { Rotation } from './rotation/rotation.ts'

export function solveInTurn(rotation: Rotation, given: SolveOptions): Solved {
  const { model, duties, grid, isLong } = rotation
  // Sums over short stints are searched sooner presolved, flows of long ones as they are: in half the time either way.
  const options: SearchOptions = { ...given, presolve: isLong ? 'off' : 'choose' }
  if (duties.size === 0 || grid.problem.previous) return solveLean(model, options)
  const driving = drivingAlone(rotation)
  // Its bound goes for the whole, since other duties only cost; what is found is no rotation yet.
  const first = solveLean(driving, withoutIncumbents(options))
  if (first.status === 'infeasible') return first
  if (!first.values || options.shouldStop?.()) return solveLean(model, options)
  const second = dutiesAround(rotation, driving.toWhole(first.values), below(first.bound, options))
  const bound = first.bound + dutiesBound(rotation, options)
  const { gapLaps = PROVED_WITHIN_LAPS } = options
  if (second.values && bound - second.objective <= gapLaps + ROUNDING) return { ...second, bound }
  const whole = solveLean(model, { ...options, start: second.values })
  const lower = whole.status === 'infeasible' ? bound : Math.min(bound, whole.bound)
  if (!second.values) return whole
  if (whole.values && whole.objective >= second.objective) return { ...whole, bound: lower }
  return { ...second, status: 'stopped', bound: lower }
}

/** The bound of one driving is none of the whole: what was known before stands. */
function below(boundLaps: number, { onProgress, ...options }: SearchOptions): SearchOptions {
  if (!onProgress) return options
  return { ...options, onProgress: (progress) => onProgress({ ...progress, boundLaps }) }
}

function drivingAlone({ model, duties }: Rotation): Part {
  const rows = model.rows.filter(({ terms }) => !terms.some(([column]) => duties.has(column)))
  return partOf(model, (column) => (duties.has(column) ? 0 : undefined), rows)
}

function dutiesAround(
  { model, stints, stops, waits }: Rotation,
  first: Float64Array,
  options: SearchOptions,
): Solved {
  const driving = new Set([
    ...stints.map(({ column }) => column),
    ...stops.values(),
    ...waits.values(),
  ])
  const around = partOf(model, (column) =>
    driving.has(column) ? Math.round(first[column] ?? 0) : undefined,
  )
  // Most of it follows from the driving: looking further ahead takes longer than the search.
  const { presolve } = options
  const solved = solve(around, { ...options, presolve: presolve === 'off' ? presolve : 'quick' })
  return { ...solved, ...(solved.values && { values: around.toWhole(solved.values) }) }
}

/** What the other duties cost at least, whoever drives: a whole number of changes. */
function dutiesBound({ model, duties, grid }: Rotation, options: SolveOptions): number {
  const rows = model.rows.filter(({ terms }) => terms.every(([column]) => duties.has(column)))
  const alone = partOf(model, (column) => (duties.has(column) ? undefined : 0), rows)
  const relaxed = relax(alone, options)
  const { dutyChangeLaps } = grid.problem
  if (relaxed.status !== 'bounded' || dutyChangeLaps === 0) return 0
  return -dutyChangeLaps * Math.ceil(-relaxed.boundLaps / dutyChangeLaps - ROUNDING)
}

const ROUNDING = 1e-6
