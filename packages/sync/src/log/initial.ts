/** The machine as a screen starts it, from nothing but what earlier `keep` effects stored. */
import { contiguous } from './confirmed.ts'
import { FULL_SPEED, type Kept, type SyncState } from './state.ts'

/**
 * Whatever is in store is taken as far as it is sound: the log up to its first gap, the outbox
 * without what that log has already. A store that lost something costs a fetch, never an entry.
 */
export function initialSync(meeting: string, kept: Kept): SyncState {
  const confirmed = contiguous(0, kept.confirmed)
  const saved = new Set(confirmed.map((entry) => entry.id))
  const aside = new Set(kept.setAside.map(({ entry }) => entry.id))
  return {
    meeting,
    device: kept.device,
    connected: false,
    confirmed,
    pending: kept.pending
      .filter(({ entry }) => !saved.has(entry.id) && !aside.has(entry.id))
      .sort((a, b) => a.entry.n - b.entry.n),
    setAside: kept.setAside,
    heardOf: confirmed.length,
    unchecked: false,
    sending: undefined,
    fetching: undefined,
    care: FULL_SPEED,
    pausing: { sending: false, fetching: false },
    stopped: undefined,
    asked: 0,
  }
}
