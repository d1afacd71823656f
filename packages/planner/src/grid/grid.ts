/** The problem laid onto its slots: what columns and rows are made from. */
import type { Person } from '../problem/person.ts'
import type { Duty, Problem } from '../problem/problem.ts'
import { goesOn, slotsOf, type Slot } from './slots.ts'

export interface Grid {
  readonly problem: Problem
  readonly slots: readonly Slot[]
  /** Whoever can drive. */
  readonly drivers: readonly Person[]
  /** Race clock before a segment, counted on from one to the next. */
  readonly offsetMs: ReadonlyMap<string, number>
  /** Race clock of all segments. */
  readonly raceMs: number
  /** Race clock of those the car runs in. */
  readonly runMs: number
  /** A stint goes on into slot t. */
  readonly goesOnAt: readonly boolean[]
}

export function gridOf(problem: Problem): Grid {
  const slots = slotsOf(problem)
  const offsetMs = new Map<string, number>()
  let [raceMs, runMs] = [0, 0]
  for (const { id, lengthMs, lane } of problem.segments) {
    offsetMs.set(id, raceMs)
    raceMs += lengthMs
    if (lane !== 'sitOut') runMs += lengthMs
  }
  return {
    ...{ problem, slots, offsetMs, raceMs, runMs },
    drivers: problem.people.filter(({ duties, pace }) => duties.includes('controller') && pace),
    goesOnAt: slots.map((slot) => goesOn(slots[slot.index - 1], slot)),
  }
}

/** Whether somebody is there for the whole of a slot and takes the duty at all. */
export function canTake({ duties, there = [] }: Person, duty: Duty, slot: Slot): boolean {
  if (!duties.includes(duty)) return false
  if (there.length === 0) return true
  return there.some(
    ({ fromAt = -Infinity, toAt = Infinity }) => fromAt <= slot.fromAt && toAt >= slot.toAt,
  )
}

/** Categories are compared without regard to capitals; all people where none is named. */
export function isOf({ categories }: Person, who: string | undefined): boolean {
  if (who === undefined) return true
  return categories.some((one) => one.toLowerCase() === who.toLowerCase())
}

/** A stretch of meeting time. */
export interface Stretch {
  readonly fromAt: number
  readonly toAt: number
}

/**
 * What counts as driving of one slot: all of it, or where stops do not count what is left after a given one. A stop
 * yet to be chosen is taken to count here, which errs on the safe side of whatever limits driving from above.
 */
export function drivenOf({ problem: { counting, stop } }: Grid, slot: Slot): Stretch {
  const { fromAt, toAt, begins } = slot
  if (counting.stops || begins !== 'stop') return { fromAt, toAt }
  return { fromAt: Math.min(toAt, fromAt + stop.standsMs), toAt }
}

export function drivenMs(grid: Grid, slot: Slot): number {
  const { fromAt, toAt } = drivenOf(grid, slot)
  return toAt - fromAt
}

/** What a stint going on into this slot drives in between: a lane change, where that counts. */
export function betweenMs({ problem, slots }: Grid, slot: Slot): number {
  const before = slots[slot.index - 1]
  if (!before || slot.begins !== 'laneChange' || !problem.counting.laneChanges) return 0
  return Math.max(0, slot.fromAt - before.toAt)
}

/** What one person drives at most: every segment, and what counts in between. */
export function mostDrivenMs(grid: Grid): number {
  return grid.slots.reduce((sum, slot) => sum + betweenMs(grid, slot), grid.raceMs)
}

/** Milliseconds two stretches share. */
export function sharedMs(one: Stretch, other: Stretch): number {
  return Math.max(0, Math.min(one.toAt, other.toAt) - Math.max(one.fromAt, other.fromAt))
}

/** Row limits are kept in minutes, so that their numbers stay small beside ones and zeros. */
export const MINUTE_MS = 60_000
