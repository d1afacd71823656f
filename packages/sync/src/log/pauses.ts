/** Waiting a little before trying again, so that a server in trouble is not hammered. */
import type { Pause, Step } from './events.ts'
import { lastGiven, type SyncState } from './state.ts'

/** Common practice, no source; the longer one is how often the server tries its own disk. */
const PAUSE_MS = { soon: 1_000, later: 2_000 } as const

export function pauseBeforeSending(state: SyncState, length: keyof typeof PAUSE_MS): Step {
  return {
    state: { ...state, pausing: { ...state.pausing, sending: true } },
    effects: [{ do: 'wait', forMs: PAUSE_MS[length], before: 'sending' }],
  }
}

export function pauseBeforeFetching(state: SyncState): Step {
  return {
    state: { ...state, pausing: { ...state.pausing, fetching: true } },
    effects: [{ do: 'wait', forMs: PAUSE_MS.soon, before: 'fetching' }],
  }
}

export function waited(state: SyncState, before: Pause): Step {
  switch (before) {
    case 'sending':
      return { state: { ...state, pausing: { ...state.pausing, sending: false } }, effects: [] }
    case 'fetching':
      return { state: { ...state, pausing: { ...state.pausing, fetching: false } }, effects: [] }
    case 'missingSaved':
      return {
        state: { ...state, heardOf: Math.max(state.heardOf, lastGiven(state)) },
        effects: [],
      }
  }
}
