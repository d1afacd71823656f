/** What goes over to a solver thread and comes back. */
import type { WorkOut } from '@pitlamp/contract'
import type { Drafts } from '@pitlamp/race'
import type { Where } from '../storage/reader.ts'

export interface WorkInput {
  readonly meeting: string
  readonly asked: WorkOut
  /** Meeting time. */
  readonly now: number
  readonly drafts: Drafts
}

export interface SolverSettings {
  /** One number that is 0 until the work is not wanted any more; the solver looks at it from inside. */
  readonly cancelled: SharedArrayBuffer
  /** It reads the log itself: a whole race read for it would be garbage on everybody's loop. */
  readonly store: Where
  /** From an earlier thread. */
  readonly program?: WebAssembly.Module
  readonly work: WorkInput
}

/** A line is a `WorkLine` as JSON text, which goes on as it is. */
export type FromSolver =
  { readonly line: string } | { readonly program: WebAssembly.Module } | { readonly done: true }
