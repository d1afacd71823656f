/** A screen's side of a meeting's log: what the server has confirmed, what waits, what was set aside. */
import { BATCH_ENTRIES, type Refusal } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'

/** An entry of this device that is not yet part of the confirmed log. */
export interface Pending {
  readonly entry: Entry
  /** As the server says it recorded it: saved, though its place in the log has not arrived here yet. */
  readonly recorded?: RecordedEntry
}

export type WhySetAside =
  | Refusal
  /** Sent alone several times and never answered for. */
  | 'keepsFailing'
  /** It was saved once, but the server was put back from an older copy. */
  | 'notInServersLog'

/** Never sent by itself again, never dropped, always shown. */
export interface SetAside {
  readonly entry: Entry
  readonly why: WhySetAside
  readonly detail?: string
}

/** What a screen has in store; what every `keep` effect adds to. */
export interface Kept {
  /** This device's id: only its own entries can be sent from here. */
  readonly device: string
  readonly confirmed: readonly RecordedEntry[]
  readonly pending: readonly Pending[]
  readonly setAside: readonly SetAside[]
}

export interface SyncState {
  readonly meeting: string
  readonly device: string
  readonly connected: boolean
  /** Numbers 1, 2, 3 … without a gap: its length is the screen's cursor. */
  readonly confirmed: readonly RecordedEntry[]
  /** In order of `n`. */
  readonly pending: readonly Pending[]
  readonly setAside: readonly SetAside[]
  /** The highest number the server is known to have. */
  readonly heardOf: number
  /** Since connecting no page has shown yet that the confirmed log is the server's. */
  readonly unchecked: boolean
  /** The one batch on its way. */
  readonly sending: { readonly batch: number; readonly ids: readonly string[] } | undefined
  /** The one page on its way. */
  readonly fetching: Fetching | undefined
  /** How carefully to send, after what went wrong since anything last got through. */
  readonly care: Care
  readonly pausing: { readonly sending: boolean; readonly fetching: boolean }
  /** Why nothing of this device can be sent until it connects anew. */
  readonly stopped: Refusal | undefined
  /** Batches and requests numbered so far. */
  readonly asked: number
}

export interface Fetching {
  readonly request: number
  /** What was heard of when it was asked for. */
  readonly heardOf: number
  /** The highest number any answer had given this screen by then: the page must come from a log that long. */
  readonly given: number
}

export interface Care {
  /** Entries in a batch at most. */
  readonly limit: number
  /** Problems and silences in a row. */
  readonly failures: number
  /** Connections lost in a row while a batch was on its way. */
  readonly drops: number
}

export const FULL_SPEED: Care = { limit: BATCH_ENTRIES, failures: 0, drops: 0 }

/** The highest number the server gave anything this screen has, confirmed or only answered for. */
export function lastGiven(state: SyncState): number {
  return state.pending.reduce(
    (last, { recorded }) => Math.max(last, recorded?.seq ?? 0),
    cursor(state),
  )
}

/** The last number this screen has without a gap before it. */
export function cursor(state: SyncState): number {
  return state.confirmed.length
}
