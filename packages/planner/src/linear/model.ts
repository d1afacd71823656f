/** A mixed-integer program put together row by row: plain data, which `solve.ts` hands to the solver. */

/** Column and coefficient. */
export type Term = readonly [column: number, factor: number]

export interface Column {
  readonly cost: number
  readonly lower: number
  readonly upper: number
  readonly whole: boolean
}

export interface Row {
  readonly terms: readonly Term[]
  readonly lower: number
  readonly upper: number
  /** Whose demand it is: rules, pins and what else can be relaxed; undefined for what always holds. */
  readonly tag?: string
}

/** The objective is to be made as large as can be. */
export interface LinearModel {
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** What the objective begins from. */
  readonly offset?: number
}

export interface ToAdd {
  readonly atLeast?: number
  readonly atMost?: number
  readonly tag?: string
}

export class ModelBuilder implements LinearModel {
  readonly columns: Column[] = []
  readonly rows: Row[] = []
  /** In which look at a row each column was last seen. */
  readonly #seenIn: number[] = []
  #looks = 0

  /** A yes or no, unless it says otherwise. Returns its number. */
  column({ cost = 0, lower = 0, upper = 1, whole = true }: Partial<Column> = {}): number {
    this.columns.push({ cost, lower, upper, whole })
    return this.columns.length - 1
  }

  /** Any share from 0 to its upper end. */
  part(column: Partial<Column> = {}): number {
    return this.column({ ...column, whole: false })
  }

  /** A row without terms holds or not: what cannot hold is kept, so that the solver says so. */
  row(terms: readonly Term[], { atLeast = -Infinity, atMost = Infinity, tag }: ToAdd): void {
    const summed = this.#isPlain(terms) ? [...terms] : added(terms)
    if (summed.length === 0 && atLeast <= 0 && atMost >= 0) return
    this.rows.push({
      terms: summed,
      lower: atLeast,
      upper: atMost,
      ...(tag === undefined ? {} : { tag }),
    })
  }

  /** Each column once, and none for nothing: as nearly all rows are. */
  #isPlain(terms: readonly Term[]): boolean {
    this.#looks += 1
    return terms.every(([column, factor]) => {
      const isTwice = this.#seenIn[column] === this.#looks
      this.#seenIn[column] = this.#looks
      return factor !== 0 && !isTwice
    })
  }

  fix(column: number, value: number): void {
    const before = this.columns[column]
    if (before) this.columns[column] = { ...before, lower: value, upper: value }
  }
}

/** Terms of one column put together; the solver takes each only once a row. */
function added(terms: readonly Term[]): readonly Term[] {
  const sums = new Map<number, number>()
  for (const [column, factor] of terms) sums.set(column, (sums.get(column) ?? 0) + factor)
  return [...sums].filter(([, factor]) => factor !== 0)
}

export function times(terms: readonly Term[], factor: number): readonly Term[] {
  return terms.map(([column, one]) => [column, one * factor] as const)
}

/** Least and most a row can come to by the bounds of its columns. */
export function reachOf(
  columns: readonly Column[],
  terms: readonly Term[],
): readonly [number, number] {
  let [least, most] = [0, 0]
  for (const [index, factor] of terms) {
    const { lower = 0, upper = 0 } = columns[index] ?? {}
    least += factor * (factor > 0 ? lower : upper)
    most += factor * (factor > 0 ? upper : lower)
  }
  return [least, most]
}
