/** Rows for what has no baseline, and what many delays come to. */
import { rounded, type Row } from '../bench/row.ts'

interface Figure {
  readonly figure: string
  readonly value: number
  readonly unit: string
}

/** Something of which there must be exactly so much, such as none. */
export function exactly(wanted: number, { figure, value, unit }: Figure): Row {
  return { figure, value, unit, ...NO_BASELINE, goal: String(wanted), met: value === wanted }
}

export function atLeast(wanted: number, { figure, value, unit }: Figure): Row {
  const goal = `at least ${String(wanted)}`
  return { figure, value, unit, ...NO_BASELINE, goal, met: value >= wanted }
}

/** NaN meets no goal. */
export function atMost(limit: number, { figure, value, unit }: Figure): Row {
  const goal = `at most ${String(limit)}`
  return { figure, value: rounded(value), unit, ...NO_BASELINE, goal, met: value <= limit }
}

const NO_BASELINE = { baseline: null, ratio: null } as const

/** The value that so large a part of them does not pass (nearest rank); NaN of nothing. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.max(0, Math.ceil(sorted.length * part) - 1)] ?? Number.NaN
}
