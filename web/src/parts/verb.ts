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

/** Up to three verbs stand in one row of a phone, more in two: each keeps at least a quarter of it. */
export function columnsInTwoRows(verbs: readonly VerbShown[]): number {
  const all = cells(verbs)
  return all <= 3 ? Math.max(2, all) : Math.ceil(all / 2)
}

/** Where the second row would have a hole, the place whose verb is meant most of the time takes it; -1 where none. */
export function grownPlace(verbs: readonly VerbShown[]): number {
  const all = cells(verbs)
  return all > 3 && all % 2 === 1 ? verbs.findIndex(({ first }) => first) : -1
}

export function cells(verbs: readonly VerbShown[]): number {
  return verbs.reduce((sum, verb) => sum + (verb.wide === true ? 2 : 1), 0)
}
