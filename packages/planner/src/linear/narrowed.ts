/**
 * To proof over few columns. The linear relaxation has a price for each: a plan in which a column is not where the
 * relaxation has it is worth less than its bound by at least that column's reduced cost (Crowder, Johnson & Padberg 1983,
 * Operations Research 31, 803–834). So the search begins among the columns of small reduced cost. Once what it finds is
 * as close to the bound as the columns left out are dear, none of them is in any better plan. Else whatever is better has
 * one of them, though none that is dearer still: among so few it is soon found, or shown not to be.
 */
import type { LinearModel, Row, Term } from './model.ts'
import { partOf, type Part } from './part.ts'
import { relax, type Bounded, type Relaxed } from './relax.ts'
import { PROVED_WITHIN_LAPS, solve, type SearchOptions, type Solved } from './solve.ts'

/** Reduced costs up to this many laps come first; up to fewer where that is many columns. */
const FIRST_LAPS = 1.5
const FEWER_LAPS = 1
const MANY = 1_000
/** Among them was no plan: so many times further. */
const FURTHER = 8
/** What was found is short of the bound by so many laps more: further first. */
const BEYOND_LAPS = 1

export function solveNarrowed(
  model: LinearModel,
  options: SearchOptions,
  relaxed: Relaxed = relax(model, options),
): Solved {
  if (relaxed.status !== 'bounded') return nothing(relaxed.status)
  const { boundLaps } = relaxed
  let withinLaps = firstLaps(model, relaxed)
  let { start } = options
  for (;;) {
    const part = cheapPart(model, relaxed, withinLaps)
    const outside = part.isAll ? -Infinity : boundLaps - withinLaps
    const found = searchedPart(part, { from: outside, to: boundLaps }, { ...options, start })
    const isStopped = found.status === 'stopped'
    if (part.isAll || isStopped) return { ...found, bound: Math.max(found.bound, outside) }
    const shortBy = boundLaps - found.objective
    if (found.values && shortBy <= withinLaps + BEYOND_LAPS) {
      return bestBeyond(model, { relaxed, withinLaps, best: found }, options)
    }
    start = found.values ?? start
    withinLaps = found.values ? shortBy : withinLaps * FURTHER
  }
}

function firstLaps({ columns }: LinearModel, { dear }: Bounded): number {
  const first = columns.filter((column, at) => !isDear(column, dear[at], FIRST_LAPS))
  return first.length > MANY ? FEWER_LAPS : FIRST_LAPS
}

function nothing(status: 'infeasible' | 'stopped'): Solved {
  return { status, objective: -Infinity, bound: status === 'infeasible' ? -Infinity : Infinity }
}

interface Searched {
  readonly relaxed: Bounded
  /** Whatever has no dearer column … */
  readonly withinLaps: number
  /** … is worth no more than the bound of this. */
  readonly best: Solved
}

function bestBeyond(model: LinearModel, searched: Searched, options: SearchOptions): Solved {
  const { relaxed, withinLaps, best } = searched
  const { boundLaps } = relaxed
  const { gapLaps = PROVED_WITHIN_LAPS, onProgress, start: _, ...rest } = options
  const shortBy = boundLaps - best.objective
  if (shortBy <= Math.max(withinLaps, gapLaps)) {
    return { ...best, bound: Math.max(best.bound, boundLaps - withinLaps) }
  }
  const part = cheapPart(model, relaxed, shortBy)
  const rows = [
    ...part.rows,
    someDearer(model, part, searched),
    worthMore(part, best.objective + gapLaps),
  ]
  const enough = Math.max(best.bound, best.objective + gapLaps)
  const range = { from: enough, to: boundLaps }
  const found = searchedPart({ ...part, rows }, range, {
    ...rest,
    ...(onProgress && {
      onProgress: (progress) => onProgress({ incumbentLaps: best.objective, ...progress }),
    }),
  })
  const bound = Math.min(boundLaps, Math.max(enough, found.bound))
  return found.values ? { ...found, bound } : { ...best, status: endOf(found), bound }
}

/** There is nothing better: what was found is the best. */
function endOf({ status }: Solved): Solved['status'] {
  return status === 'stopped' ? 'stopped' : 'optimal'
}

function someDearer(model: LinearModel, part: Part, { relaxed, withinLaps }: Searched): Row {
  const { better, dear } = relaxed
  const terms: Term[] = []
  let atLeast = 1
  model.columns.forEach((column, at) => {
    const place = part.placeOf(at)
    if (place === undefined || !isDear(column, dear[at], withinLaps)) return
    const way = better[at] === column.upper ? -1 : 1
    terms.push([place, way])
    atLeast += way * (better[at] ?? 0)
  })
  return { terms, lower: atLeast, upper: Infinity }
}

function worthMore({ columns, offset = 0 }: LinearModel, laps: number): Row {
  const terms = columns.flatMap(({ cost }, at): Term[] => (cost === 0 ? [] : [[at, cost]]))
  return { terms, lower: laps - offset, upper: Infinity }
}

function isDear(
  { whole, lower, upper }: LinearModel['columns'][number],
  dear = 0,
  withinLaps: number,
): boolean {
  return whole && lower < upper && dear > withinLaps
}

/** Where so much of all would be searched, all of it is. */
const NEARLY_ALL = 0.75

interface CheapPart extends Part {
  readonly isAll: boolean
}

/** All columns that are no dearer; the others stay where the relaxation has them. */
function cheapPart(model: LinearModel, { better, dear }: Bounded, withinLaps: number): CheapPart {
  const held = model.columns.map((column, at) => isDear(column, dear[at], withinLaps))
  const free = held.filter((one) => !one).length
  const isAll = free > NEARLY_ALL * model.columns.length
  const heldAt = (at: number) => (held[at] && !isAll ? better[at] : undefined)
  return { ...partOf(model, heldAt), isAll }
}

/** The bound is that of the part; what is told lies between those known before. */
function searchedPart(
  part: Part,
  { from, to }: { readonly from: number; readonly to: number },
  { onProgress, start, ...options }: SearchOptions,
): Solved {
  const { values, bound, ...found } = solve(part, {
    ...options,
    ...(start && { start: part.fromWhole(start) }),
    ...(onProgress && {
      onProgress: ({ boundLaps, ...progress }) =>
        onProgress({ ...progress, boundLaps: Math.min(Math.max(boundLaps, from), to) }),
    }),
  })
  return { ...found, bound: Math.min(bound, to), ...(values && { values: part.toWhole(values) }) }
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
