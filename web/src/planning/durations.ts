/**
 * Lengths as rules write them and people type them: `1:15` is hours and minutes, but minutes and seconds where
 * seconds are asked for; `45 s` and `10 min` say so themselves.
 */
import { hoursMinutes } from '../parts/time.ts'

export type Unit = 's' | 'min' | 'h'
const UNIT_MS: Readonly<Record<Unit, number>> = { s: 1_000, min: 60_000, h: 3_600_000 }
const MOST_MS = 864_000_000

/** `plain` is what a bare number is read as. Undefined for what is no length, or longer than ten days. */
export function readDuration(text: string, plain: Unit): number | undefined {
  const typed = text.trim().toLowerCase().replace(',', '.')
  const colons = /^(\d{1,3}):([0-5]?\d)(?::([0-5]?\d))?$/.exec(typed)
  const worded = /^(\d+(?:\.\d+)?)\s*(s|min|h)?$/.exec(typed)
  if (colons && colons[3] === undefined && plain === 's') {
    return Number(colons[1]) * UNIT_MS.min + Number(colons[2]) * UNIT_MS.s
  }
  const ms = colons
    ? Number(colons[1]) * UNIT_MS.h +
      Number(colons[2]) * UNIT_MS.min +
      Number(colons[3] ?? 0) * UNIT_MS.s
    : worded
      ? Number(worded[1]) * UNIT_MS[(worded[2] as Unit | undefined) ?? plain]
      : NaN
  return ms <= MOST_MS ? Math.round(ms) : undefined
}

/** Hours as `1:15`; shorter things in the unit people say them in: `45 s`, `10 min`. */
export function writeDuration(ms: number, plain: Unit): string {
  if (plain === 'h') return hoursMinutes(ms)
  if (plain === 'min' && ms % UNIT_MS.min === 0) return `${ms / UNIT_MS.min} min`
  return ms % UNIT_MS.s === 0 ? `${ms / UNIT_MS.s} s` : `${(ms / UNIT_MS.s).toFixed(1)} s`
}
