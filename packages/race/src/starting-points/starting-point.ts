/** Rules to begin a meeting from. Every line may be changed, and none is an official default. */
import type { ProgrammeItem, Regulations, SegmentItem } from '../documents/rules.ts'

export interface StartingPoint {
  readonly id: string
  /** As a list of them reads. */
  readonly called: string
  /** Body, event, year and address; of our own formats that they have none. */
  readonly source: string
  readonly regulations: Regulations
}

export const MINUTE_MS = 60_000
export const HOUR_MS = 3_600_000
export const NO_SOURCE = 'common practice, no source'

export interface Row {
  readonly count: number
  readonly lengthMs: number
  readonly between: 'laneChange' | 'break'
  /** Of what lies between two segments; left out where it is not published. */
  readonly betweenMs?: number
  /** On fixed lanes. */
  readonly lane?: SegmentItem['lane']
  /** Places, counted from 1, at which the team sits out. */
  readonly sitOuts?: readonly number[]
}

/** Segments `s1`, `s2` … with `b1`, `b2` … between them. */
export function row(of: Row): ProgrammeItem[] {
  const { count, lengthMs, between, betweenMs, lane, sitOuts = [] } = of
  return Array.from({ length: count }, (_, place): ProgrammeItem[] => {
    const number = place + 1
    const drawn = sitOuts.includes(number) ? 'sitOut' : lane
    const segment: ProgrammeItem = {
      ...{ id: `s${number}`, kind: 'segment', length: { by: 'time', lengthMs } },
      ...(drawn === undefined ? {} : { lane: drawn }),
    }
    const after: ProgrammeItem = {
      ...{ id: `b${number}`, kind: between },
      ...(betweenMs === undefined ? {} : { lengthMs: betweenMs }),
    }
    return number === count ? [segment] : [segment, after]
  }).flat()
}
