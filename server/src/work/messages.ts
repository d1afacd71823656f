/** What goes over to a solver thread and comes back. */
import type { WorkLine, WorkOut } from '@pitlamp/contract'
import type { Drafts, RecordedEntry } from '@pitlamp/race'

export interface WorkInput {
  readonly asked: WorkOut
  /** Meeting time. */
  readonly now: number
  readonly drafts: Drafts
}

export interface SolverSettings {
  /** One number that is 0 until the work is not wanted any more; the solver looks at it from inside. */
  readonly cancelled: SharedArrayBuffer
}

/** The log comes page by page, so that neither side copies all of it at once; then what is asked for. */
export type ToSolver = { readonly page: readonly RecordedEntry[] } | { readonly work: WorkInput }

export type FromSolver = { readonly line: WorkLine } | { readonly done: true }
