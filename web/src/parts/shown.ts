/** What parts are given to show: text already in words, times already in the venue's zone. */
import type { Urgency } from './urgency.ts'

export interface Tile {
  readonly id: string
  readonly word: string
  readonly hint?: string
  /** Chosen, where tiles are a choice that stays open. */
  readonly chosen?: boolean
  /** It cannot be pressed yet; the hint says what is missing. */
  readonly off?: boolean
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
  readonly person?: string
  readonly name?: string
  readonly plannedEnd?: string
}

export interface DutyShown {
  readonly id: string
  readonly person: string
  readonly duty: string
  readonly name: string
  readonly where?: string
  /** `late`, `away until 14:20`: said where it is not simply here. */
  readonly presence?: string
}

/** Somebody without a duty. */
export interface RestShown {
  readonly id: string
  readonly name: string
  readonly presence?: string
}

export interface HandoverShown {
  /** `About 14:08, in this order` */
  readonly when: string
  readonly steps: readonly string[]
}

export interface ObligationShown extends CountdownShown {
  readonly id: string
  readonly what: string
  /** What one press on it records. */
  readonly press?: string
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
  /** Why its repair does not count now. */
  readonly paused?: string
  readonly rule?: RepairRuleShown
  /** Its time is stamped, its name still to be said. */
  readonly unnamed: boolean
  readonly urgency: Urgency
  readonly lit: boolean
}

/** What a compulsory repair's rule leaves. */
export interface RepairRuleShown {
  /** `Rule: within 4 laps` */
  readonly limit: string
  /** `about 0:38 left, estimated` */
  readonly left?: string
  /** 1 to 0 for the wick. */
  readonly burn?: number
  readonly verdict?: string
  /** The milder limit and why, further limits, cost, clause. */
  readonly notes: readonly string[]
}

/** What is left on the load. */
export interface EnergyShown {
  /** `about 34 laps, 4:45` */
  readonly words: string
  /** `estimated since it was filled 14:02`; absent where nothing says how much there is. */
  readonly basis?: string
}

/** What stands beside the clock. */
export interface HeaderFact {
  readonly label: string
  readonly value: string
  readonly under?: string
  /** Understood without its label where there is little room. */
  readonly speaks: boolean
  /** What a press on it opens. */
  readonly press?: string
}

export interface CallShown {
  readonly id: string
  readonly words: string
  /** `called 3 times, passed on to Ben` */
  readonly so?: string
  readonly calledAt: number
  /** A wake-up call that is still to come. */
  readonly ahead: boolean
}

export interface SaidShown {
  readonly id: string
  readonly time: string
  readonly words: string
  readonly undone: boolean
  /** Said only where it is not yet `saved`. */
  readonly saved?: string
}
