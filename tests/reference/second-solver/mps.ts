/**
 * A model as free-format MPS, which every solver of mixed-integer programs reads. MPS minimises where nothing is said,
 * and not every solver reads what would say otherwise, so that costs change their sign: the optimum read there is
 * minus the laps. A whole model begins from nothing; only parts of one have an offset, and none is written.
 */
import type { Column, LinearModel, Row } from '../../../packages/planner/src/linear/model.ts'

/** Columns are named `c0`, `c1` …, rows `r0`, `r1` … in the model's order, the objective `minusLaps`. */
export function mpsOf({ columns, rows }: LinearModel, name: string): string {
  const entries: string[][] = columns.map(({ cost }) => (cost === 0 ? [] : [`minusLaps ${-cost}`]))
  rows.forEach(({ terms }, row) => {
    for (const [column, factor] of terms) entries[column]?.push(`r${row} ${factor}`)
  })
  return [
    // Without the word some take short names for columns of the older fixed format.
    ...[`NAME ${name} FREE`, 'ROWS', ' N minusLaps'],
    ...rows.map((row, index) => ` ${kindOf(row)} r${index}`),
    'COLUMNS',
    ...columns.flatMap((column, index) => columnLines(column, index, entries[index] ?? [])),
    'RHS',
    ...rows.map((row, index) => ` rhs r${index} ${sideOf(row)}`),
    'RANGES',
    ...rows.flatMap((row, index) =>
      isRange(row) ? [` range r${index} ${row.upper - row.lower}`] : [],
    ),
    'BOUNDS',
    ...columns.flatMap(boundLines),
    ...['ENDATA', ''],
  ].join('\n')
}

/** A range is written as its upper side, and by how much the lower lies below it. */
function kindOf({ lower, upper }: Row): 'E' | 'L' | 'G' | 'N' {
  if (lower === upper) return 'E'
  if (Number.isFinite(upper)) return 'L'
  return Number.isFinite(lower) ? 'G' : 'N'
}

function sideOf({ lower, upper }: Row): number {
  return Number.isFinite(upper) ? upper : Number.isFinite(lower) ? lower : 0
}

function isRange({ lower, upper }: Row): boolean {
  return Number.isFinite(lower) && Number.isFinite(upper) && lower !== upper
}

/** Each whole column between markers of its own; a column without a term is named all the same. */
function columnLines({ whole }: Column, index: number, entries: readonly string[]) {
  const all = entries.length > 0 ? entries : ['minusLaps 0']
  const lines = all.map((entry) => ` c${index} ${entry}`)
  if (!whole) return lines
  return [` m${index} 'MARKER' 'INTORG'`, ...lines, ` n${index} 'MARKER' 'INTEND'`]
}

/** All are written down, since solvers do not agree on what a whole column is bounded by where nothing is said. */
function boundLines({ lower, upper }: Column, index: number): readonly string[] {
  const of = (kind: string, value: number) =>
    Number.isFinite(value)
      ? ` ${kind} bound c${index} ${value}`
      : ` ${infinite[kind]} bound c${index}`
  return [of('LO', lower), of('UP', upper)]
}

const infinite: Readonly<Record<string, string>> = { LO: 'MI', UP: 'PL' }
