/**
 * Everything that can happen to a screen's copy of the log, and everything it can ask for in answer.
 * The shell around the machine turns sockets, timers and IndexedDB into these, and nothing else.
 */
import type { Appended, EntriesPage, Problem, Push } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Pending, SetAside, SyncState } from './state.ts'

export type SyncEvent =
  /** A press whose entry is in the outbox already: `n` was given in that same transaction. */
  | { readonly what: 'pressed'; readonly entry: Entry }
  /** The welcome came; `last` is the last number the meeting's log has on the server. */
  | { readonly what: 'connected'; readonly last: number }
  | { readonly what: 'disconnected' }
  | { readonly what: 'pushed'; readonly push: Push }
  | { readonly what: 'fetched'; readonly request: number; readonly page: EntriesPage }
  | { readonly what: 'fetchFailed'; readonly request: number }
  | { readonly what: 'appended'; readonly batch: number; readonly appended: Appended }
  /** Without a problem: no answer came in time. */
  | { readonly what: 'appendFailed'; readonly batch: number; readonly problem?: Problem }
  | { readonly what: 'waited'; readonly before: Pause }
  /** Somebody pressed "send again": these entries, or all that were set aside. */
  | { readonly what: 'retrySetAside'; readonly ids?: readonly string[] }

/** What a pause comes before. */
export type Pause = 'sending' | 'fetching' | 'missingSaved'

export type Effect =
  | Keep
  /** Send and answer with `appended` or `appendFailed` of the same batch. */
  | { readonly do: 'append'; readonly batch: number; readonly entries: readonly Entry[] }
  /** Get the page after this number and answer with `fetched` or `fetchFailed` of the same request. */
  | { readonly do: 'fetch'; readonly request: number; readonly after: number }
  /** Answer with `waited` after so long. Late or double ones do no harm, so no timer is ever cancelled. */
  | { readonly do: 'wait'; readonly forMs: number; readonly before: Pause }

/** What must be stored, all of it in one transaction, in the order of these fields. */
export interface Keep {
  readonly do: 'keep'
  /** Forget the stored log beyond this number. */
  readonly cutAfter?: number
  /** Put into the stored log, by number. */
  readonly confirmed?: readonly RecordedEntry[]
  /** Put into the outbox, by entry id, out of what was set aside. */
  readonly pending?: readonly Pending[]
  /** Put into what is set aside, by entry id, out of the outbox. */
  readonly setAside?: readonly SetAside[]
  /** Entry ids to take out of the outbox and of what is set aside: the stored log has them. */
  readonly settled?: readonly string[]
}

export interface Step {
  readonly state: SyncState
  readonly effects: readonly Effect[]
}
