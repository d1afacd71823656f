/** A verb as it stands on the bar. `id` is its meaning: a button that changes it goes to sleep for a moment. */
export interface VerbShown {
  readonly id: string
  readonly word: string
  readonly hint?: string
  /** The one that is meant most of the time. */
  readonly first?: boolean
  readonly plain?: boolean
  readonly wide?: boolean
}

/** What was recorded last and can still be taken back. */
export interface UndoShown {
  readonly entry: string
  /** `De-slot recorded 14:03:10` */
  readonly words: string
  /** The place on the bar it was pressed at, from 0. */
  readonly place: number
}

/** Columns (from 1) of the undo button, above the verb it takes back, and of its words on the roomier side. */
export interface UndoColumns {
  readonly button: number
  readonly from: number
  readonly to: number
}

export function undoColumns(place: number, columns: number): UndoColumns {
  const button = (Math.max(0, place) % columns) + 1
  return button > columns / 2
    ? { button, from: 1, to: button }
    : { button, from: button + 1, to: columns + 1 }
}

/** A bar in two rows where one row would leave too little width: a verb keeps at least a third of a phone. */
export function columnsInTwoRows(verbs: readonly VerbShown[]): number {
  return Math.max(2, Math.ceil(cells(verbs) / 2))
}

export function cells(verbs: readonly VerbShown[]): number {
  return verbs.reduce((sum, verb) => sum + (verb.wide === true ? 2 : 1), 0)
}
