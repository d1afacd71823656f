/** One line of a bench: what was measured, against what, and whether the goal is met. */
export interface Row {
  readonly figure: string
  readonly value: number
  readonly unit: string
  /** Measured in the same run; the figure's name says what it is. */
  readonly baseline: number | null
  readonly ratio: number | null
  readonly goal: string
  readonly met: boolean
}

/** A module of the bench exports its measurement under this name. */
export interface BenchModule {
  readonly bench: () => Promise<readonly Row[]> | readonly Row[]
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted[Math.floor(sorted.length / 2)]
  if (middle === undefined) throw new Error('There is no median of nothing.')
  return middle
}

/** Two digits after the point: enough for every goal. */
export function rounded(value: number): number {
  return Math.round(value * 100) / 100
}
