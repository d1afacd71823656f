import type { Span } from './problem.ts'

export interface Segment {
  readonly id: string
  /** What lies before it: a stint goes on over a lane change, and ends at a break. */
  readonly after: 'start' | 'laneChange' | 'break'
  /** Meeting time of its green. */
  readonly startsAt: number
  readonly lengthMs: number
  /** Left out where it is not drawn yet. In a sit-out nobody drives. */
  readonly lane?: number | 'sitOut'
  /** Stops that are given, or were made. */
  readonly stops: readonly GivenStop[]
  /** Moments at which duties may change while the car runs on. */
  readonly cutsMs?: readonly number[]
  /** Stops may be chosen at the multiples of this. */
  readonly gridMs?: number
  /** Stops may be chosen at these. */
  readonly mayStopAtMs?: readonly number[]
  /** What was raced: up to here nothing can be changed. */
  readonly past?: Past
}

export interface GivenStop {
  readonly id: string
  readonly atMs: number
  readonly mandatory: boolean
  readonly task?: string
}

export interface Past {
  readonly untilMs: number
  readonly spans: readonly Span[]
}
