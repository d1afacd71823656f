/** What a screen folds and shows: the confirmed log and what is on this device besides. */
import { refusalSentence, type Refusal } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { SetAside, SyncState, WhySetAside } from './state.ts'

export type SavedState = 'keptOnThisDevice' | 'saved' | 'refused'

/**
 * What the fold is given, in no particular order. The same entry is the same object from call to call.
 * What the server refused is left out, since no other screen will ever see it.
 */
export function view(state: SyncState): readonly (Entry | RecordedEntry)[] {
  return [
    ...state.confirmed,
    ...state.pending.map(({ entry, recorded }) => recorded ?? entry),
    ...state.setAside.filter((one) => !isRefused(one)).map(({ entry }) => entry),
  ]
}

/** Undefined for an entry this screen has never seen. */
export function savedState(state: SyncState, entryId: string): SavedState | undefined {
  const pending = state.pending.find(({ entry }) => entry.id === entryId)
  if (pending) return pending.recorded ? 'saved' : 'keptOnThisDevice'
  const aside = state.setAside.find(({ entry }) => entry.id === entryId)
  if (aside) return isRefused(aside) ? 'refused' : 'keptOnThisDevice'
  return state.confirmed.some(({ id }) => id === entryId) ? 'saved' : undefined
}

/** Entries of this device that are nowhere else. */
export function unsentCount(state: SyncState): number {
  const waiting = state.pending.filter(({ recorded }) => !recorded).length
  return waiting + state.setAside.filter(({ entry }) => entry.device === state.device).length
}

export function setAsideSentence(why: WhySetAside): string {
  return isRefusal(why) ? refusalSentence(why) : SENTENCES[why]
}

const SENTENCES = {
  keepsFailing:
    'This entry could not be sent after several tries. It stays on this device: press Send again.',
  notInServersLog:
    'The server was put back from an older copy and no longer has this entry. It stays here until the device it was made on sends it again.',
} as const

/** Refused by the server, or known beforehand to be. */
export function isRefused<A extends Pick<SetAside, 'why'>>(
  aside: A,
): aside is A & { readonly why: Refusal } {
  return isRefusal(aside.why)
}

function isRefusal(why: WhySetAside): why is Refusal {
  return !(why in SENTENCES)
}
