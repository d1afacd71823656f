import type { Duty } from './problem.ts'

export interface Person {
  readonly id: string
  /** Duties this person can take. */
  readonly duties: readonly Duty[]
  readonly categories: readonly string[]
  /** When this person is there, in meeting time; open where an end is left out, always where nothing is said. */
  readonly there?: readonly { readonly fromAt?: number; readonly toAt?: number }[]
  /** Needed of whoever can drive. */
  readonly pace?: Pace
  /** This person's part in the equal shares, 1 where nothing is said; 0 leaves them out. */
  readonly share?: number
}

export interface Pace {
  /** Lap time, fresh, on a lane like any other. */
  readonly lapMs: number
  /** How well that is known: one standard deviation. */
  readonly knownToMs: number
  /** What an hour at the controller without a break adds to the lap time. */
  readonly slowerPerHourMs: number
  /** Laps lost until this person has found in after taking the controller. */
  readonly findingInLaps: number
  /** What a lane adds to the lap time, by its number. */
  readonly laneAddsMs?: Readonly<Record<number, number>>
}
