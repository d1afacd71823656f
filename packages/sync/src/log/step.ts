/** One event in, the next state and what to do about it out. Total: nothing that arrives can break it. */
import type { Entry } from '@pitlamp/race'
import { appendFailed, appended } from './answers.ts'
import { afterTrouble, setAside } from './care.ts'
import { isTooLong, nextBatch } from './batches.ts'
import { connected, fetchFailed, fetched, pushed } from './catch-up.ts'
import type { Step, SyncEvent } from './events.ts'
import { waited } from './pauses.ts'
import { retry } from './retry.ts'
import { cursor, lastGiven, type SyncState } from './state.ts'

export function step(state: SyncState, event: SyncEvent): Step {
  const happened = happen(state, event)
  const fetch = askForEntries(happened.state)
  const send = sendWaiting(fetch.state)
  return { state: send.state, effects: [...happened.effects, ...fetch.effects, ...send.effects] }
}

function happen(state: SyncState, event: SyncEvent): Step {
  switch (event.what) {
    case 'pressed':
      return pressed(state, event.entry)
    case 'connected':
      return connected(state, event.last)
    case 'disconnected':
      return disconnected(state)
    case 'pushed':
      return pushed(state, event.push)
    case 'fetched':
      return fetched(state, event.request, event.page)
    case 'fetchFailed':
      return fetchFailed(state, event.request)
    case 'appended':
      return appended(state, event.batch, event.appended)
    case 'appendFailed':
      return appendFailed(state, event.batch, event.problem)
    case 'waited':
      return waited(state, event.before)
    case 'retrySetAside':
      return retry(state, event.ids)
  }
}

function pressed(state: SyncState, entry: Entry): Step {
  const known =
    state.pending.some((one) => one.entry.id === entry.id) ||
    state.setAside.some((one) => one.entry.id === entry.id) ||
    state.confirmed.some((one) => one.id === entry.id)
  if (known) return { state, effects: [] }
  const pending = [...state.pending, { entry }].sort((a, b) => a.entry.n - b.entry.n)
  return { state: { ...state, pending }, effects: [] }
}

function disconnected(state: SyncState): Step {
  if (!state.connected) return { state, effects: [] }
  const down: SyncState = { ...state, connected: false, fetching: undefined }
  return down.sending ? afterTrouble(down, 'drop') : { state: down, effects: [] }
}

function askForEntries(state: SyncState): Step {
  const { heardOf, unchecked, fetching, pausing } = state
  const isLevel = !unchecked && cursor(state) >= heardOf
  if (!state.connected || isLevel || fetching || pausing.fetching) return { state, effects: [] }
  const request = state.asked + 1
  // One entry back: if it is not the one this screen has, the server's log is not the one it copied.
  const after = Math.max(0, cursor(state) - 1)
  const asked = { request, heardOf, given: lastGiven(state) }
  return {
    state: { ...state, asked: request, fetching: asked },
    effects: [{ do: 'fetch', request, after }],
  }
}

function sendWaiting(state: SyncState): Step {
  if (!state.connected || state.sending || state.pausing.sending || state.stopped) {
    return { state, effects: [] }
  }
  const waiting = state.pending.filter((one) => !one.recorded).map((one) => one.entry)
  const front = waiting.slice(0, state.care.limit)
  const tooLong = front.filter(isTooLong).map((entry) => entry.id)
  if (tooLong.length > 0) {
    const aside = setAside(state, tooLong, 'tooLarge')
    const rest = sendWaiting(aside.state)
    return { state: rest.state, effects: [...aside.effects, ...rest.effects] }
  }
  const entries = nextBatch(front)
  if (entries.length === 0) return { state, effects: [] }
  const batch = state.asked + 1
  const sending = { batch, ids: entries.map((entry) => entry.id) }
  return {
    state: { ...state, asked: batch, sending },
    effects: [{ do: 'append', batch, entries }],
  }
}
