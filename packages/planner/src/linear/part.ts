/** A model with some of its columns held at a value, and with the rows that are left to be kept. */
import { reachOf, type Column, type LinearModel, type Row, type Term } from './model.ts'

export interface Part extends LinearModel {
  /** Values of all columns of the whole from those of the part, and back. */
  readonly toWhole: (values: ArrayLike<number>) => Float64Array
  readonly fromWhole: (values: ArrayLike<number>) => Float64Array
  /** Where a column of the whole is in the part; undefined for one that is held. */
  readonly placeOf: (column: number) => number | undefined
}

/** `heldAt`: undefined for a column that stays free. */
export function partOf(
  whole: LinearModel,
  heldAt: (column: number) => number | undefined,
  rows: readonly Row[] = whole.rows,
): Part {
  const held = new Float64Array(whole.columns.length)
  const place = new Int32Array(whole.columns.length).fill(-1)
  const columns: Column[] = []
  let offset = whole.offset ?? 0
  whole.columns.forEach((column, index) => {
    const value = heldAt(index)
    if (value === undefined) {
      place[index] = columns.length
      columns.push(column)
    } else {
      held[index] = value
      offset += value * column.cost
    }
  })
  const kept = rows.flatMap((row): Row[] => {
    const left = leftOf(row, { held, place })
    return isAlwaysKept(columns, left) ? [] : [left]
  })
  return {
    ...{ columns, rows: kept, offset },
    toWhole: (values) => held.map((value, index) => values[place[index] ?? -1] ?? value),
    fromWhole: (values) =>
      Float64Array.from(values).filter((_, index) => (place[index] ?? -1) >= 0),
    placeOf: (column) => ((place[column] ?? -1) >= 0 ? place[column] : undefined),
  }
}

function leftOf(
  row: Row,
  { held, place }: { readonly held: Float64Array; readonly place: Int32Array },
): Row {
  const terms: Term[] = []
  let over = 0
  for (const [column, factor] of row.terms) {
    const at = place[column] ?? -1
    if (at >= 0) terms.push([at, factor])
    else over += factor * (held[column] ?? 0)
  }
  return { terms, lower: row.lower - over, upper: row.upper - over }
}

/** Rounding: what the solver takes for kept. */
const EXACT_TO = 1e-6

function isAlwaysKept(columns: readonly Column[], { terms, lower, upper }: Row): boolean {
  const [least, most] = reachOf(columns, terms)
  return least >= lower - EXACT_TO && most <= upper + EXACT_TO
}
