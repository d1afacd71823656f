/** Expected laps: running time over lap time, slot by slot. */
import type { Pace, Person } from '../problem/person.ts'
import type { StopLength } from '../problem/problem.ts'
import type { Slot } from './slots.ts'

const HOUR_MS = 3_600_000

/** Lap time in a slot, so long after the stint began; tiredness is reckoned at the slot's middle. */
export function lapMsIn(pace: Pace, slot: Slot, sinceAt: number): number {
  const { lapMs, slowerPerHourMs, laneAddsMs = {} } = pace
  const { lane } = slot.segment
  const added = typeof lane === 'number' ? (laneAddsMs[lane] ?? 0) : 0
  const hours = ((slot.fromAt + slot.toAt) / 2 - sinceAt) / HOUR_MS
  return lapMs + added + slowerPerHourMs * hours
}

/** Time the car runs in a slot; `stops` where it begins with a stop. */
export function runningMs(slot: Slot, stops: boolean, { costsMs }: StopLength): number {
  return Math.max(0, slot.toMs - slot.fromMs - (stops ? costsMs : 0))
}

/** Laps of one slot of a stint that began at `sinceAt`. */
export function lapsIn(person: Person, slot: Slot, at: InStint): number {
  if (!person.pace) return 0
  return runningMs(slot, at.stops, at.stop) / lapMsIn(person.pace, slot, at.sinceAt)
}

export interface InStint {
  readonly sinceAt: number
  readonly stops: boolean
  readonly stop: StopLength
}

/** What standing at a stop costs whoever drives on after it; how tired they are by then is left out. */
export function waitLaps(pace: Pace, slot: Slot, { costsMs }: StopLength): number {
  const middleAt = (slot.fromAt + slot.toAt) / 2
  return Math.min(costsMs, slot.toMs - slot.fromMs) / lapMsIn(pace, slot, middleAt)
}
