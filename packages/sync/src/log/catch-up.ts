/** Keeping the confirmed log level with the server's: pushes, pages, and a look at the last entry on connecting. */
import type { EntriesPage, Push } from '@pitlamp/contract'
import type { Step } from './events.ts'
import { take } from './confirmed.ts'
import { cutBack } from './cut-back.ts'
import { pauseBeforeFetching } from './pauses.ts'
import { cursor, type SyncState } from './state.ts'

/** How far the server said its log goes may be old news by now: only a page shows that it is shorter. */
export function connected(state: SyncState, last: number): Step {
  const fresh: SyncState = {
    ...state,
    connected: true,
    heardOf: last,
    unchecked: true,
    sending: undefined,
    fetching: undefined,
    pausing: { sending: false, fetching: false },
    stopped: undefined,
  }
  return { state: fresh, effects: [] }
}

/**
 * A push that begins beyond the cursor tells of a gap; it is not taken, the gap is fetched. So is everything
 * until this connection's first page has shown that the log here is the server's: what is put on top of
 * another log hides that it is another.
 */
export function pushed(state: SyncState, push: Push): Step {
  if (!state.connected || push.meeting !== state.meeting) return { state, effects: [] }
  const heard = { ...state, heardOf: Math.max(state.heardOf, push.to) }
  return state.unchecked ? { state: heard, effects: [] } : take(heard, push.entries)
}

export function fetched(state: SyncState, request: number, page: EntriesPage): Step {
  const asked = state.fetching
  if (asked?.request !== request) return { state, effects: [] }
  const arrived: SyncState = { ...state, fetching: undefined, unchecked: false }
  if (page.last < asked.given) return cutBack({ ...arrived, heardOf: page.last }, page.last)
  const heardOf = Math.max(state.heardOf, page.last)
  const taken = take({ ...arrived, heardOf }, page.entries)
  // A page that brings nothing although more is there must not be asked for again at once, for ever.
  const nothingNew = taken.effects.length === 0 && heardOf === asked.heardOf
  const isStuck = nothingNew && cursor(taken.state) < heardOf
  return isStuck ? pauseBeforeFetching(taken.state) : taken
}

export function fetchFailed(state: SyncState, request: number): Step {
  if (state.fetching?.request !== request) return { state, effects: [] }
  return pauseBeforeFetching({ ...state, fetching: undefined })
}
