/**
 * A server put back from an older copy has forgotten entries it once answered for. Its log counts, but
 * nothing acknowledged may be lost: what this screen's copy has beyond it goes back to where it came from.
 */
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Step } from './events.ts'
import { FULL_SPEED, type Pending, type SetAside, type SyncState } from './state.ts'

/**
 * Own entries beyond number `after` go to the outbox; those of others are set aside until they come back.
 * What was only answered for is sent again, and what is left is compared with the server's log once more.
 */
export function cutBack(state: SyncState, after: number): Step {
  const beyond = state.confirmed.slice(after)
  const own = beyond.filter((entry) => entry.device === state.device)
  const others = beyond.filter((entry) => entry.device !== state.device)
  const lost: SetAside[] = others.map((entry) => ({ entry: asSent(entry), why: 'notInServersLog' }))
  const pending: Pending[] = [
    ...state.pending.map(({ entry }) => ({ entry })),
    ...own.map((entry) => ({ entry: asSent(entry) })),
  ].sort((a, b) => a.entry.n - b.entry.n)
  return {
    state: {
      ...state,
      confirmed: state.confirmed.slice(0, after),
      pending,
      setAside: [...state.setAside, ...lost],
      unchecked: true,
      care: FULL_SPEED,
    },
    effects: [{ do: 'keep', cutAfter: after, pending, setAside: lost }],
  }
}

function asSent(recorded: RecordedEntry): Entry {
  const { seq: _seq, recordedAt: _recordedAt, role: _role, ...entry } = recorded
  return entry
}
