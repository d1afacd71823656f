/**
 * What a rotation is worked out from: plain data. Ids and lengths only; who they are called and what a rule says in
 * words is the caller's. Times ending in `Ms` lie on a segment's race clock or are lengths, `At` is meeting time.
 */
import type { Rule } from '../rules/index.ts'
import type { Wish } from '../wishes/index.ts'
import type { Person } from './person.ts'
import type { Segment } from './segment.ts'

/** A duty that has to be held by somebody; off duty is to hold none. */
export type Duty = 'controller' | 'post' | 'wall' | 'bench'

export interface Problem {
  /** In the order in which they are run. */
  readonly segments: readonly Segment[]
  readonly people: readonly Person[]
  /** Each may be relaxed by its id. */
  readonly rules: readonly Rule[]
  readonly wishes: readonly Wish[]
  readonly pins: readonly Pin[]
  readonly stop: StopLength
  readonly counting: Counting
  readonly balance: Balance
  /** Pairs of duties that one person may hold at once. */
  readonly joined: readonly (readonly [Duty, Duty])[]
  /** What somebody taking up another duty than the controller costs, in laps: small, so that nobody runs about. */
  readonly dutyChangeLaps: number
  /** The plan so far, for a price on every span that changes. */
  readonly previous?: Previous
}

/** How long the car is away for a mandatory stop. */
export interface StopLength {
  /** The minimum: what does not count as driving where stops do not. */
  readonly standsMs: number
  /** Everything lost against going on, in time. */
  readonly costsMs: number
}

/** What counts as driving, and what begins a stint. */
export interface Counting {
  /** Standing at a stop counts for whoever has the controller. */
  readonly stops: boolean
  /** So does the lane change a stint goes on over. */
  readonly laneChanges: boolean
  /** Going on with oneself at a stop begins a new stint. */
  readonly changeWithOneself: boolean
}

/** Equal shares against laps. */
export interface Balance {
  /** So much more or less than the equal share costs nothing. */
  readonly toleranceMs: number
  /** Laps the captain gives up for each hour of one driver beyond that. */
  readonly lapsPerHour: number
}

/** Decided by hand. Named in conflicts like a rule. */
export type Pin =
  | (PinnedStretch & { readonly kind: 'span'; readonly person: string; readonly duty: Duty })
  | (PinnedStretch & { readonly kind: 'off'; readonly person: string })
  | { readonly id: string; readonly kind: 'stop'; readonly segment: string; readonly atMs: number }

interface PinnedStretch {
  readonly id: string
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

/** A stretch of somebody's duty, on one segment's race clock. */
export interface Span {
  readonly person: string
  readonly duty: Duty
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
  readonly post?: string
}

export interface Previous {
  readonly spans: readonly Span[]
  /** What a span that was not there before costs, in laps. */
  readonly changeLaps: number
  /** A span is the same if both its ends moved by no more than this. */
  readonly sameWithinMs: number
}
