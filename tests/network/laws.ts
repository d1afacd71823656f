/** What must hold: after every turn, and once everything has arrived. */
import assert from 'node:assert/strict'
import type { RecordedEntry } from '@pitlamp/race'
import { savedState, view } from '@pitlamp/sync'
import type { Screen } from './screen.ts'

/** However it stands with the network, a screen never loses a press, never has one twice and never shows a gap. */
export function checkScreen({ state, pressed }: Screen): void {
  state.confirmed.forEach((entry, index) => {
    assert.equal(entry.seq, index + 1, 'The confirmed log has a gap.')
  })
  const places = [
    ...state.confirmed.map(({ id }) => id),
    ...state.pending.map(({ entry }) => entry.id),
    ...state.setAside.map(({ entry }) => entry.id),
  ]
  const once = new Set(places)
  const refusedByLog = state.setAside.filter(({ why }) => why === 'otherBody').length
  assert.equal(places.length - refusedByLog, once.size, 'An entry is there twice.')
  const folded = new Set(view(state).map(({ id }) => id))
  for (const id of pressed.keys()) {
    assert.ok(once.has(id), 'A press was lost.')
    assert.ok(folded.has(id) || savedState(state, id) === 'refused', 'A press is not in view.')
  }
}

/** An entry shown as saved is on the server's disk. */
export function checkSaved(screen: Screen, onDisk: ReadonlySet<string>): void {
  for (const id of screen.pressed.keys()) {
    const isTrue = savedState(screen.state, id) !== 'saved' || onDisk.has(id)
    assert.ok(isTrue, 'An entry is shown as saved and is not on the disk.')
  }
}

/** The network is whole and everything has arrived: one log, on every screen, and nothing missing in it. */
export function checkConverged(screens: readonly Screen[], log: readonly RecordedEntry[]): void {
  log.forEach((entry, index) => assert.equal(entry.seq, index + 1, 'The server’s log has a gap.'))
  assert.equal(
    new Set(log.map(({ id }) => id)).size,
    log.length,
    'The server’s log has an entry twice.',
  )
  const logged = new Map(log.map((entry) => [entry.id, entry]))
  for (const { state, pressed } of screens) {
    assert.deepEqual(state.confirmed, log, 'A screen’s log is not the server’s.')
    assert.deepEqual(state.pending, [], 'Something still waits.')
    for (const [id, entry] of pressed) {
      const recorded = logged.get(id)
      if (recorded) assert.equal(recorded.body, entry.body, 'An entry was changed.')
      else assert.equal(savedState(state, id), 'refused', 'A press is nowhere.')
    }
  }
}

/** Set aside on others is only what its own device was refused since. */
export function checkNobodyElseMisses(screens: readonly Screen[]): void {
  const refused = new Set(
    screens.flatMap(({ state, device }) =>
      state.setAside.filter(({ entry }) => entry.device === device).map(({ entry }) => entry.id),
    ),
  )
  for (const { state, device } of screens) {
    const others = state.setAside.filter(({ entry }) => entry.device !== device)
    for (const { entry } of others)
      assert.ok(refused.has(entry.id), 'An entry of another device is missing.')
  }
}
