/**
 * Lines taken out of a list, each kept in its place for ten seconds, so that a press brings it back from
 * where it was.
 */
import { backAt, shownWith, type Gone, type ShownLine } from './gone.ts'

const UNDO_WITHIN_REAL_MS = 10_000

export class TakenOut<T extends { readonly id: string }> {
  readonly #lines: () => T[]
  #gone = $state.raw<readonly Gone<T>[]>([])
  readonly shown: readonly ShownLine<T>[] = $derived.by(() => shownWith(this.#lines(), this.#gone))
  /** Ids that may come back, not to be given to others meanwhile. */
  readonly ids = $derived.by(() => this.#gone.map(({ line }) => ({ id: line.id })))

  /** `lines` is the list that is changed in place. */
  constructor(lines: () => T[]) {
    this.#lines = lines
  }

  takeOut(id: string): void {
    const lines = this.#lines()
    const index = lines.findIndex((line) => line.id === id)
    const [taken] = index < 0 ? [] : lines.splice(index, 1)
    if (!taken) return
    const gone: Gone<T> = { line: $state.snapshot<unknown>(taken) as T, index }
    this.#gone = [...this.#gone, gone]
    setTimeout(() => this.#forget(gone), UNDO_WITHIN_REAL_MS)
  }

  bringBack(id: string): void {
    const gone = this.#gone.find(({ line }) => line.id === id)
    if (!gone) return
    const index = backAt(this.shown, id)
    this.#forget(gone)
    this.#lines().splice(index, 0, gone.line)
  }

  #forget(gone: Gone<T>): void {
    this.#gone = this.#gone.filter((one) => one !== gone)
  }
}
