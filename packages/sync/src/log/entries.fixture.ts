/** Entries for tests: told apart by device and count, as the server would record them. */
import type { Appended, EntriesPage, Push } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Effect, SyncEvent } from './events.ts'
import { initialSync } from './initial.ts'
import type { SyncState } from './state.ts'
import { step } from './step.ts'

export const meeting = '01999999-0000-7000-8000-000000000001'
export const wall = '01999999-0000-7000-8000-00000000000a'
export const phone = '01999999-0000-7000-8000-00000000000b'

/** A note of the wall's tablet, unless said otherwise. */
export function note(n: number, more: Partial<Entry> = {}): Entry {
  const device = more.device ?? wall
  return {
    v: 1,
    id: `01999999-${device.slice(-4)}-7000-8000-${String(n).padStart(12, '0')}`,
    device,
    n,
    at: 1_000_000 + n,
    atBoundMs: 5,
    epoch: 0,
    kind: 'note.1',
    body: `{"words":"${String(n)}"}`,
    ...more,
  }
}

/** As it stands in the server's log. */
export function inLog(seq: number, entry: Entry): RecordedEntry {
  return { ...entry, seq, recordedAt: 2_000_000 + seq, role: 'pitWall' }
}

export function pushOf(from: number, ...entries: RecordedEntry[]): SyncEvent {
  const push: Push = { meeting, from, to: from + entries.length, entries }
  return { what: 'pushed', push }
}

export function page(request: number, last: number, ...entries: RecordedEntry[]): SyncEvent {
  const first = entries[0]?.seq ?? 1
  const body: EntriesPage = { from: first - 1, to: first - 1 + entries.length, last, entries }
  return { what: 'fetched', request, page: body }
}

export function answer(batch: number, ...results: Appended['results']): SyncEvent {
  return { what: 'appended', batch, appended: { results } }
}

export function saved(seq: number, entry: Entry): Appended['results'][number] {
  return { outcome: 'recorded', id: entry.id, seq, recordedAt: 2_000_000 + seq, role: 'pitWall' }
}

export function screen(more: Partial<SyncState> = {}): SyncState {
  return {
    ...initialSync(meeting, { device: wall, confirmed: [], pending: [], setAside: [] }),
    ...more,
  }
}

/** A screen with this log, connected to a server that has no more. */
export function connectedScreen(confirmed: readonly RecordedEntry[] = []): SyncState {
  return screen({ confirmed, heardOf: confirmed.length, connected: true })
}

/** Plays events one after the other; effects are those of all of them. */
export function play(
  start: SyncState,
  ...events: SyncEvent[]
): { state: SyncState; effects: Effect[] } {
  const effects: Effect[] = []
  let state = start
  for (const event of events) {
    const next = step(state, event)
    state = next.state
    effects.push(...next.effects)
  }
  return { state, effects }
}

export function sent(effects: readonly Effect[]): number[][] {
  return effects.flatMap((one) => (one.do === 'append' ? [one.entries.map(({ n }) => n)] : []))
}

export function fetchedAfter(effects: readonly Effect[]): number[] {
  return effects.flatMap((one) => (one.do === 'fetch' ? [one.after] : []))
}
