/** Which rows of a long list are drawn: those in sight and a few around them, so that 20,000 cost as much as 20. */

export interface Sight {
  /** How far the top of the list is above the top of the screen; negative below it. */
  readonly scrolledPx: number
  readonly heightPx: number
}
export interface RowWindow {
  readonly from: number
  /** After the last one drawn. */
  readonly to: number
  readonly abovePx: number
  readonly belowPx: number
}

const AROUND = 8

export function windowOf(rows: number, rowPx: number, { scrolledPx, heightPx }: Sight): RowWindow {
  const first = Math.floor(Math.max(0, scrolledPx) / rowPx) - AROUND
  const last = Math.ceil(Math.max(0, scrolledPx + heightPx) / rowPx) + AROUND
  const to = Math.max(0, Math.min(rows, last))
  const from = Math.max(0, Math.min(first, to))
  return { from, to, abovePx: from * rowPx, belowPx: (rows - to) * rowPx }
}
