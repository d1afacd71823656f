/**
 * Rows that nobody comes near are left out, and with them the names for sums that only those read: a smaller model is
 * searched sooner. It allows more, so its bound goes for the whole; and what it finds is the best of the whole, too,
 * where that keeps every row. Where it does not, the rows it breaks are put back, and it is searched again.
 */
import type { LinearModel, Row } from './model.ts'
import { solveNarrowed } from './narrowed.ts'
import { partOf, type Part } from './part.ts'
import { relax, type Bounded } from './relax.ts'
import type { SearchOptions, Solved } from './solve.ts'

/** Then everything is searched: rows that are broken again and again are near after all. */
const MOST_SEARCHES = 3

export function solveLean(model: LinearModel, options: SearchOptions): Solved {
  const relaxed = relax(model, options)
  if (relaxed.status !== 'bounded') return solveNarrowed(model, options, relaxed)
  const far = farRows(model, relaxed)
  const kept = new Set<Row>()
  for (let search = 1; search < MOST_SEARCHES; search += 1) {
    const lean = leanPart(model, { far, kept })
    if (lean.rows.length > LITTLE_LESS * model.rows.length) break
    const { start } = options
    const found = solveNarrowed(lean, {
      ...withoutIncumbents(options),
      ...(start && { start: lean.fromWhole(start) }),
    })
    if (!found.values) return found
    const values = lean.toWhole(found.values)
    const broken = model.rows.filter((row) => !isKept(row, values))
    if (broken.length === 0) return { ...found, values }
    if (options.shouldStop?.())
      return { ...found, status: 'stopped', values: undefined, objective: -Infinity }
    for (const row of broken) {
      far.delete(row)
      kept.add(row)
    }
  }
  return solveNarrowed(model, options, relaxed)
}

/** Nothing is told of what is found: it may break what was left out. */
export function withoutIncumbents({ onProgress, ...options }: SearchOptions): SearchOptions {
  if (!onProgress) return options
  return { ...options, onProgress: ({ boundLaps }) => onProgress({ boundLaps }) }
}

/** Where so much of all would be searched, all of it is: the leaner model needs a relaxation of its own. */
const LITTLE_LESS = 0.75

/** It takes more than so many of its columns to come from where the relaxation is to where a row is broken. */
const FAR_COLUMNS = 1
/** Rows of so few columns cost nothing. */
const SHORT = 8

function farRows({ rows }: LinearModel, { reached }: Bounded): Set<Row> {
  const isFar = ({ terms, lower, upper }: Row, at: number) => {
    if (terms.length <= SHORT || lower === upper) return false
    const now = reached[at] ?? 0
    const step = terms.reduce((most, [, factor]) => Math.max(most, Math.abs(factor)), 0)
    return Math.min(upper - now, now - lower) > FAR_COLUMNS * step
  }
  return new Set(rows.filter(isFar))
}

interface Rows {
  readonly far: ReadonlySet<Row>
  /** Left out before, and broken. */
  readonly kept: ReadonlySet<Row>
}

function leanPart(model: LinearModel, { far, kept }: Rows): Part {
  const rows = model.rows.filter((row) => !far.has(row))
  const names = namesIn(model, rows, kept)
  const said = new Set(names.values())
  const part = partOf(
    model,
    (column) => (names.has(column) ? 0 : undefined),
    rows.filter((row) => !said.has(row)),
  )
  return { ...part, toWhole: (values) => named(model, part.toWhole(values), names) }
}

/** Names for sums, in no row but the one that says what they are, and that row. What is decided is more than a name. */
function namesIn(
  { columns }: LinearModel,
  rows: readonly Row[],
  kept: ReadonlySet<Row>,
): ReadonlyMap<number, Row> {
  const uses = new Int32Array(columns.length)
  for (const { terms } of rows) for (const [column] of terms) uses[column] = (uses[column] ?? 0) + 1
  const names = new Map<number, Row>()
  for (const row of rows) {
    if (row.lower !== row.upper || kept.has(row)) continue
    const name = row.terms.find(([column]) => {
      const { whole, cost, lower, upper } = columns[column] ?? {}
      const isFree = whole === false && lower === 0 && upper !== 0
      return isFree && cost === 0 && uses[column] === 1
    })
    if (name) names.set(name[0], row)
  }
  return names
}

/** Every name at what its row says, or as near as it may come. */
function named(
  { columns }: LinearModel,
  values: Float64Array,
  names: ReadonlyMap<number, Row>,
): Float64Array {
  for (const [name, { terms, lower: sum }] of names) {
    const { lower = 0, upper = Infinity } = columns[name] ?? {}
    const factor = terms.find(([column]) => column === name)?.[1] ?? 1
    const others = reachedBy(terms, values) - factor * (values[name] ?? 0)
    values[name] = Math.min(upper, Math.max(lower, (sum - others) / factor))
  }
  return values
}

/** Rounding, in the units of a row. */
const EXACT_TO = 1e-4

function isKept({ terms, lower, upper }: Row, values: Float64Array): boolean {
  const reached = reachedBy(terms, values)
  return reached >= lower - EXACT_TO && reached <= upper + EXACT_TO
}

function reachedBy(terms: Row['terms'], values: Float64Array): number {
  return terms.reduce((sum, [column, factor]) => sum + factor * (values[column] ?? 0), 0)
}
