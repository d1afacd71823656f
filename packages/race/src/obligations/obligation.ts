export type ObligationKind =
  | 'stintEnd'
  | 'stopWindowOpens'
  | 'stopWindowCloses'
  | 'plannedStop'
  | 'stopGo'
  | 'nextDuty'
  | 'relief'
  | 'segmentEnd'
  | 'callDue'
  | 'callUnanswered'
  | 'readTheClock'
  | 'repairLimit'
  | 'energyEmpty'
  | 'servePenalty'
  | 'protestEnds'
  | 'lightTest'

/** Something that falls due at an instant. Its id stems from an entry or a line of plan or rules. */
export interface Obligation {
  readonly id: string
  readonly kind: ObligationKind
  readonly dueAt: number
  /** Its clock stands still: `dueAt` slides, and no alert fires. */
  readonly held: boolean
  /** The whole of it, for the wick. */
  readonly lengthMs?: number
  /** Reckoned at a pace that was entered, not counted. */
  readonly estimated?: true
  /** When the captain wants to hear of it, before it is due; its kind's own moments where nothing is said. */
  readonly alertsMs?: readonly number[]
  /** Ids of the people it concerns. */
  readonly concerns: readonly string[]
  /** A short plain sentence without a time in it. */
  readonly label: string
}
