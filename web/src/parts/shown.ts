/** What parts are given to show: text already in words, times already in the venue's zone. */
import type { Urgency } from './urgency.ts'

export interface Tile {
  readonly id: string
  readonly word: string
  readonly hint?: string
  /** Chosen, where tiles are a choice that stays open. */
  readonly chosen?: boolean
}

export interface CountdownShown {
  /** Absent while nothing counts. */
  readonly figure?: string
  /** What the figure counts: `left in this stint`, `over by`. */
  readonly label: string
  /** 1 to 0 for the wick; absent where nothing says how long it was to be. */
  readonly left?: number
  readonly urgency: Urgency
  readonly held: boolean
  readonly lit: boolean
}

export interface StintShown extends CountdownShown {
  readonly name?: string
  readonly plannedEnd?: string
}

export interface DutyShown {
  readonly id: string
  readonly duty: string
  readonly name: string
  readonly where?: string
}

export interface HandoverShown {
  /** `About 14:08, in this order` */
  readonly when: string
  readonly steps: readonly string[]
}

export interface ObligationShown extends CountdownShown {
  readonly id: string
  readonly what: string
}

/** A later obligation, in one line. */
export interface LineShown {
  readonly id: string
  readonly words: string
  readonly figure: string
}

export interface FaultShown {
  readonly id: string
  readonly name: string
  readonly noted: string
  readonly runningWith: string
  /** Absent until somebody has begun to mend it. */
  readonly repair?: string
  readonly repairing: boolean
  /** Its time is stamped, its name still to be said. */
  readonly unnamed: boolean
  readonly lit: boolean
}

export interface SaidShown {
  readonly id: string
  readonly time: string
  readonly words: string
  readonly undone: boolean
  /** Said only where it is not yet `saved`. */
  readonly saved?: string
}
