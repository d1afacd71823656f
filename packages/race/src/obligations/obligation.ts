export type ObligationKind =
  | 'stintEnd'
  | 'stopWindowOpens'
  | 'stopWindowCloses'
  | 'plannedStop'
  | 'stopGo'
  | 'nextDuty'
  | 'relief'
  | 'segmentEnd'
  | 'callUnanswered'
  | 'readTheClock'

/** Something that falls due at an instant. Its id stems from an entry or a line of plan or rules. */
export interface Obligation {
  readonly id: string
  readonly kind: ObligationKind
  readonly dueAt: number
  /** Its clock stands still: `dueAt` slides, and no alert fires. */
  readonly held: boolean
  /** The whole of it, for the wick. */
  readonly lengthMs?: number
  /** Ids of the people it concerns. */
  readonly concerns: readonly string[]
  /** A short plain sentence without a time in it. */
  readonly label: string
}
