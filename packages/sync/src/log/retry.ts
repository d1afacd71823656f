/** Somebody looked at what was set aside and pressed "send again". */
import type { Pending, SyncState } from './state.ts'
import { FULL_SPEED } from './state.ts'
import type { Step } from './events.ts'

/** Entries of other devices, and those whose id the log has with other content, can never be sent from here. */
export function retry(state: SyncState, ids?: readonly string[]): Step {
  const saved = new Set(state.confirmed.map((entry) => entry.id))
  const again = state.setAside.filter(
    ({ entry }) =>
      (ids === undefined || ids.includes(entry.id)) &&
      entry.device === state.device &&
      !saved.has(entry.id),
  )
  if (again.length === 0) return { state, effects: [] }
  const back: Pending[] = again.map(({ entry }) => ({ entry }))
  return {
    state: {
      ...state,
      setAside: state.setAside.filter((one) => !again.includes(one)),
      pending: [...state.pending, ...back].sort((a, b) => a.entry.n - b.entry.n),
      care: FULL_SPEED,
    },
    effects: [{ do: 'keep', pending: back }],
  }
}
