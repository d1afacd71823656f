/**
 * Stops to be chosen over a long race: a coarse grid first, then the fine one around the stops it found. A heuristic:
 * how far it can be from the best is told by the linear relaxation of the whole fine grid, and where that is not close,
 * by a search of the few columns that could be worth more. Nothing more is claimed.
 */
import { mayStopAt } from './grid/slots.ts'
import { solveInTurn } from './in-turn.ts'
import { loweredBound } from './linear/narrowed.ts'
import { relax } from './linear/relax.ts'
import type { SolveOptions } from './linear/solve.ts'
import { answerOf, type Answer, type Planned } from './answer/answer.ts'
import type { Problem } from './problem/problem.ts'
import { build } from './rotation/build.ts'

const HOUR_MS = 3_600_000
/** Up to this the whole grid is worked out at once. */
const AT_ONCE_MS = 6 * HOUR_MS
const COARSE_MS = HOUR_MS / 4

export function isLong({ segments }: Problem): boolean {
  const onGrid = segments.filter(({ gridMs = Infinity }) => gridMs < COARSE_MS)
  return onGrid.reduce((sum, { lengthMs }) => sum + lengthMs, 0) > AT_ONCE_MS
}

/** For problems without faults. */
export function planLong(problem: Problem, options: SolveOptions): Answer {
  const coarse = build(onCoarseGrid(problem))
  const first = answerOf(coarse, solveInTurn(coarse, { ...options, gapLaps: options.gapLaps ?? 1 }))
  if (first.kind !== 'planned' || options.shouldStop?.()) return first
  const fine = build(around(problem, first))
  const second = answerOf(fine, solveInTurn(fine, { ...options, gapLaps: options.gapLaps ?? 1 }))
  const best = second.kind === 'planned' && second.worthLaps >= first.worthLaps ? second : first
  const boundLaps = Math.max(best.worthLaps, boundOf(problem, best.worthLaps, options))
  return { ...best, boundLaps, gapLaps: boundLaps - best.worthLaps, proof: 'within' }
}

function onCoarseGrid(problem: Problem): Problem {
  const segments = problem.segments.map((segment) => {
    const { gridMs } = segment
    if (gridMs === undefined) return segment
    return { ...segment, gridMs: gridMs * Math.max(1, Math.round(COARSE_MS / gridMs)) }
  })
  return { ...problem, segments }
}

/** Within a coarse step of each stop that was chosen. */
function around(problem: Problem, { stops }: Planned): Problem {
  const segments = problem.segments.map((segment) => {
    const { gridMs: _, ...rest } = segment
    const near = mayStopAt(segment, problem).filter((ms) =>
      stops.some(({ segment: id, atMs }) => id === segment.id && Math.abs(atMs - ms) < COARSE_MS),
    )
    return { ...rest, mayStopAtMs: near }
  })
  return { ...problem, segments }
}

/** So close is close enough of a long race. */
const CLOSE_LAPS = 4
/** Longer than this the bound is not worked on: how low it comes is not repeatable. */
const BOUND_SECONDS = 5

/** Of the whole fine grid; infinite where the relaxation was stopped. */
function boundOf(problem: Problem, worthLaps: number, options: SolveOptions): number {
  const { model } = build(problem)
  const relaxed = relax(model, options)
  if (relaxed.status !== 'bounded') return Infinity
  const laps = worthLaps + CLOSE_LAPS
  const limitSeconds = Math.min(BOUND_SECONDS, options.limitSeconds ?? Infinity)
  return loweredBound(model, { relaxed, laps }, { ...options, limitSeconds })
}
