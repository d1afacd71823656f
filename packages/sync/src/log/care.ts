/** Sending more carefully after trouble, until the one entry that causes it stands alone and is set aside. */
import { BATCH_ENTRIES } from '@pitlamp/contract'
import type { Step } from './events.ts'
import { FULL_SPEED, type Care, type SetAside, type SyncState, type WhySetAside } from './state.ts'

const FAILURES_BEFORE_LESS = 2
/** A lost connection says little about an entry: poor Wi-Fi is no reason to set it aside. Common practice, no source. */
const DROPS_BEFORE_SETTING_ASIDE = 5

export function recovered(care: Care): Care {
  return { ...FULL_SPEED, limit: Math.min(BATCH_ENTRIES, care.limit * 2) }
}

export function halved(size: number): Care {
  return { ...FULL_SPEED, limit: Math.ceil(size / 2) }
}

/** The batch on its way got no usable answer, or the connection was lost under it. */
export function afterTrouble(state: SyncState, trouble: 'failure' | 'drop'): Step {
  const ids = state.sending?.ids ?? []
  const care: Care = {
    limit: state.care.limit,
    failures: state.care.failures + (trouble === 'failure' ? 1 : 0),
    drops: state.care.drops + (trouble === 'drop' ? 1 : 0),
  }
  const idle = { ...state, sending: undefined }
  if (ids.length > 1 && care.failures + care.drops >= FAILURES_BEFORE_LESS) {
    return { state: { ...idle, care: halved(ids.length) }, effects: [] }
  }
  const alone = ids.length === 1
  if (
    alone &&
    (care.failures >= FAILURES_BEFORE_LESS || care.drops >= DROPS_BEFORE_SETTING_ASIDE)
  ) {
    return setAside({ ...idle, care: FULL_SPEED }, ids, 'keepsFailing')
  }
  return { state: { ...idle, care }, effects: [] }
}

/** Out of the outbox, never out of sight. */
export function setAside(state: SyncState, ids: readonly string[], why: WhySetAside): Step {
  return setAsideEach(state, new Map(ids.map((id) => [id, { why }])))
}

export function setAsideEach(
  state: SyncState,
  reasons: ReadonlyMap<string, { readonly why: WhySetAside; readonly detail?: string }>,
): Step {
  const leaving = state.pending.filter(({ entry }) => reasons.has(entry.id))
  if (leaving.length === 0) return { state, effects: [] }
  const aside: SetAside[] = leaving.flatMap(({ entry }) => {
    const reason = reasons.get(entry.id)
    return reason ? [{ entry, ...reason }] : []
  })
  const pending = state.pending.filter(({ entry }) => !reasons.has(entry.id))
  return {
    state: { ...state, pending, setAside: [...state.setAside, ...aside] },
    effects: [{ do: 'keep', setAside: aside }],
  }
}
