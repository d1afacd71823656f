/** The confirmed log grows by what follows on it, and by nothing else. */
import type { Entry, RecordedEntry } from '@pitlamp/race'
import { cutBack } from './cut-back.ts'
import type { Keep, Step } from './events.ts'
import { FULL_SPEED, cursor, type Pending, type SetAside, type SyncState } from './state.ts'

/** Entries of a push or a page, in any order: what is there already is skipped, a gap ends it. */
export function take(state: SyncState, entries: readonly RecordedEntry[]): Step {
  if (entries.some((entry) => isOfAnotherHistory(state, entry))) return cutBack(state, 0)
  const fresh = contiguous(cursor(state), entries)
  if (fresh.length === 0) return { state, effects: [] }
  return settle({ ...state, confirmed: [...state.confirmed, ...fresh] }, fresh)
}

/** The run of entries that follows on number `after` without a gap. */
export function contiguous(after: number, entries: readonly RecordedEntry[]): RecordedEntry[] {
  const run: RecordedEntry[] = []
  for (const entry of [...entries].sort((a, b) => a.seq - b.seq)) {
    if (entry.seq === after + run.length + 1) run.push(entry)
  }
  return run
}

/**
 * A number has one entry for ever, recorded at one time. If it has another, the server was put back from an
 * older copy: an entry sent again may get its old number by chance, but was not recorded then.
 */
export function isOfAnotherHistory(state: SyncState, entry: Numbered): boolean {
  const ours = state.confirmed[entry.seq - 1] ?? answeredFor(state, entry.seq)
  return ours !== undefined && (ours.id !== entry.id || ours.recordedAt !== entry.recordedAt)
}

function answeredFor(state: SyncState, seq: number): Numbered | undefined {
  return state.pending.find(({ recorded }) => recorded?.seq === seq)?.recorded
}

type Numbered = Pick<RecordedEntry, 'seq' | 'id' | 'recordedAt'>

/** What the log now has leaves the outbox and what was set aside, whoever brought it. */
function settle(state: SyncState, fresh: readonly RecordedEntry[]): Step {
  const arrived = new Map(fresh.map((entry) => [entry.id, entry]))
  const settled: string[] = []
  const pending: Pending[] = []
  const setAside: SetAside[] = []
  const refused: SetAside[] = []
  for (const waiting of state.pending) {
    const saved = arrived.get(waiting.entry.id)
    if (!saved) pending.push(waiting)
    else if (isSame(waiting.entry, saved)) settled.push(waiting.entry.id)
    else refused.push({ entry: waiting.entry, why: 'otherBody' })
  }
  for (const aside of state.setAside) {
    const saved = arrived.get(aside.entry.id)
    if (saved && isSame(aside.entry, saved)) settled.push(aside.entry.id)
    else setAside.push(aside)
  }
  const gotThrough = pending.length < state.pending.length
  return {
    state: {
      ...state,
      pending,
      setAside: [...setAside, ...refused],
      sending: stillSending(state, pending),
      care: gotThrough ? FULL_SPEED : state.care,
    },
    effects: [keepFresh(fresh, settled, refused)],
  }
}

/** A batch whose every entry has arrived in the log needs no answer any more. */
function stillSending(state: SyncState, pending: readonly Pending[]): SyncState['sending'] {
  const open = new Set(pending.map(({ entry }) => entry.id))
  return state.sending?.ids.some((id) => open.has(id)) ? state.sending : undefined
}

function keepFresh(
  confirmed: readonly RecordedEntry[],
  settled: readonly string[],
  setAside: readonly SetAside[],
): Keep {
  return {
    do: 'keep',
    confirmed,
    ...(setAside.length > 0 ? { setAside } : {}),
    ...(settled.length > 0 ? { settled } : {}),
  }
}

/** The same entry to the byte, whatever the server has added to it. */
export function isSame(ours: Entry, saved: Entry): boolean {
  return (
    ours.body === saved.body &&
    ours.kind === saved.kind &&
    ours.device === saved.device &&
    ours.n === saved.n &&
    ours.person === saved.person &&
    ours.at === saved.at &&
    ours.atBoundMs === saved.atBoundMs &&
    ours.epoch === saved.epoch
  )
}
