/**
 * To proof over few columns. The linear relaxation has a price for each: a plan in which a column is not where the
 * relaxation has it is worth less than its bound by at least that column's reduced cost (Crowder, Johnson & Padberg 1983,
 * Operations Research 31, 803–834). So the search begins among the columns of small reduced cost. Once what it finds is
 * as close to the bound as the columns left out are dear, none of them is in any better plan; else it begins again with
 * as many more as that takes.
 */
import type { LinearModel } from './model.ts'
import { partOf, type Part } from './part.ts'
import { relax, type Bounded } from './relax.ts'
import { PROVED_WITHIN_LAPS, solve, type SearchOptions, type Solved } from './solve.ts'

/** Reduced costs up to this many laps come first. */
const FIRST_LAPS = 1
/** Among them was no plan: so many times further. */
const FURTHER = 8

export function solveNarrowed(model: LinearModel, options: SearchOptions): Solved {
  const relaxed = relax(model, options)
  if (relaxed.status !== 'bounded') return nothing(relaxed.status)
  let { start } = options
  let withinLaps = FIRST_LAPS
  for (;;) {
    const part = cheapPart(model, relaxed, withinLaps)
    const found = searchedPart(part, { relaxed, withinLaps }, { ...options, start })
    const shortBy = relaxed.boundLaps - found.objective
    if (part.isAll || found.status === 'stopped') return found
    if (shortBy <= Math.max(withinLaps, options.gapLaps ?? 0)) return found
    start = found.values ?? start
    withinLaps = found.values ? shortBy + PROVED_WITHIN_LAPS : withinLaps * FURTHER
  }
}

function nothing(status: 'infeasible' | 'stopped'): Solved {
  return { status, objective: -Infinity, bound: status === 'infeasible' ? -Infinity : Infinity }
}

/** Where so much of all would be searched, all of it is. */
const NEARLY_ALL = 0.75

interface CheapPart extends Part {
  readonly isAll: boolean
}

/** All columns that are no dearer; the others stay where the relaxation has them. */
function cheapPart(model: LinearModel, { better, dear }: Bounded, withinLaps: number): CheapPart {
  const isDear = model.columns.map(
    ({ whole, lower, upper }, at) => whole && lower < upper && (dear[at] ?? 0) > withinLaps,
  )
  const free = isDear.filter((one) => !one).length
  const isAll = free > NEARLY_ALL * model.columns.length
  const heldAt = (at: number) => (isDear[at] && !isAll ? better[at] : undefined)
  return { ...partOf(model, heldAt), isAll }
}

interface Narrow {
  readonly relaxed: Bounded
  readonly withinLaps: number
}

/** What lies outside the part is worth less than the relaxation by what it is dear at least. */
function searchedPart(
  part: CheapPart,
  { relaxed, withinLaps }: Narrow,
  { onProgress, start, ...options }: SearchOptions,
): Solved {
  const outside = part.isAll ? -Infinity : relaxed.boundLaps - withinLaps
  const boundOf = (bound: number) => Math.min(Math.max(bound, outside), relaxed.boundLaps)
  const { values, bound, ...found } = solve(part, {
    ...options,
    ...(start && { start: part.fromWhole(start) }),
    ...(onProgress && {
      onProgress: ({ boundLaps, ...progress }) =>
        onProgress({ ...progress, boundLaps: boundOf(boundLaps) }),
    }),
  })
  return { ...found, bound: boundOf(bound), ...(values && { values: part.toWhole(values) }) }
}

/** A bound as low as `laps`, if a search of the few columns that could be worth more comes down to that. */
export function loweredBound(
  model: LinearModel,
  { relaxed, laps }: { readonly relaxed: Bounded; readonly laps: number },
  options: SearchOptions,
): number {
  const withinLaps = relaxed.boundLaps - laps
  if (withinLaps <= 0) return relaxed.boundLaps
  let known = relaxed.boundLaps
  const { status, bound } = solve(cheapPart(model, relaxed, withinLaps), {
    ...options,
    onProgress: ({ boundLaps }) => {
      known = Math.min(known, boundLaps)
    },
    shouldStop: () => known <= laps || (options.shouldStop?.() ?? false),
  })
  return Math.max(laps, status === 'infeasible' ? laps : Math.min(known, bound))
}
