import { problem } from '@pitlamp/contract'
import { describe, expect, it } from 'vitest'
import { answer, connectedScreen, note, play, saved, sent } from './entries.fixture.ts'
import type { SyncEvent } from './events.ts'
import type { SyncState } from './state.ts'
import { savedState, view } from './view.ts'

/** Six entries waiting, the first batch of them on its way. */
function sixOnTheirWay(): SyncState {
  const pending = [1, 2, 3, 4, 5].map((n) => ({ entry: note(n) }))
  return play({ ...connectedScreen(), pending }, { what: 'pressed', entry: note(6) }).state
}
const again: SyncEvent = { what: 'waited', before: 'sending' }
const silence = (batch: number): SyncEvent => ({ what: 'appendFailed', batch })
const lost: readonly SyncEvent[] = [{ what: 'disconnected' }, { what: 'connected', last: 0 }]

describe('batches that fail', () => {
  it('S13: are halved after the second time', () => {
    const { effects } = play(sixOnTheirWay(), silence(1), again, silence(2), again)
    expect(sent(effects)).toEqual([
      [1, 2, 3, 4, 5, 6],
      [1, 2, 3],
    ])
  })

  it('S13: are halved by lost connections too, since too long a message closes one without a word', () => {
    const { effects } = play(sixOnTheirWay(), ...lost, ...lost)
    expect(sent(effects)).toEqual([
      [1, 2, 3, 4, 5, 6],
      [1, 2, 3],
    ])
  })

  it('S13: are halved at once, without a pause, when the server says it was too much', () => {
    const tooMuch: SyncEvent = {
      what: 'appendFailed',
      batch: 1,
      problem: problem('batchTooLarge'),
    }
    expect(sent(play(sixOnTheirWay(), tooMuch).effects)).toEqual([[1, 2, 3]])
  })

  it('S13: grow again with what gets through', () => {
    const halved = play(sixOnTheirWay(), silence(1), again, silence(2), again)
    const through = [1, 2, 3].map((n) => saved(n, note(n)))
    expect(halved.state.care.limit).toBe(3)
    // 3 × 2
    expect(play(halved.state, answer(3, ...through)).state.care.limit).toBe(6)
  })
})

describe('an entry that fails alone', () => {
  it('S14: is set aside after the second time, kept in view, and the rest goes on', () => {
    const only = play(connectedScreen(), { what: 'pressed', entry: note(1) }).state
    const failing = play(
      only,
      silence(1),
      again,
      silence(2),
      { what: 'pressed', entry: note(2) },
      again,
    )
    expect(failing.state.setAside).toEqual([{ entry: note(1), why: 'keepsFailing' }])
    expect(failing.effects).toContainEqual({ do: 'keep', setAside: failing.state.setAside })
    expect(savedState(failing.state, note(1).id)).toBe('keptOnThisDevice')
    expect(view(failing.state)).toContainEqual(note(1))
    expect(sent(failing.effects)).toEqual([[1], [2]])
  })

  it('S14: is found among others by halving', () => {
    let state = sixOnTheirWay()
    const bad = note(5).id
    for (let turn = 0; turn < 40 && state.pending.some((one) => !one.recorded); turn += 1) {
      const { batch, ids } = state.sending ?? { batch: 0, ids: [] }
      const going = state.pending.filter(({ entry }) => ids.includes(entry.id))
      const results = going.map(({ entry }) => saved(entry.n, entry))
      const event = ids.includes(bad) ? silence(batch) : answer(batch, ...results)
      state = play(state, event, again).state
    }
    expect(state.setAside.map(({ entry }) => entry.n)).toEqual([5])
    expect(state.pending.map(({ entry }) => entry.n)).toEqual([1, 2, 3, 4, 6])
  })

  it('S14: is not set aside for four lost connections, but for the fifth', () => {
    const only = play(connectedScreen(), { what: 'pressed', entry: note(1) }).state
    const four = play(only, ...lost, ...lost, ...lost, ...lost).state
    expect(four.setAside).toEqual([])
    expect(play(four, { what: 'disconnected' }).state.setAside).toHaveLength(1)
  })

  it('S14: starts afresh once anything got through', () => {
    const failedOnce = play(
      connectedScreen(),
      { what: 'pressed', entry: note(1) },
      silence(1),
      again,
    )
    const through = play(failedOnce.state, answer(2, saved(1, note(1))))
    const next = play(through.state, { what: 'pressed', entry: note(2) }, silence(3), again)
    expect(next.state.setAside).toEqual([])
    expect(sent(next.effects)).toEqual([[2], [2]])
  })
})

describe('an entry too long', () => {
  it('S15: for its kind is set aside without being sent, and the rest goes on', () => {
    // 8 KiB are 8,192 bytes; each ü is two of them.
    const long = note(1, { body: 'ü'.repeat(4_097) })
    const { state, effects } = play(
      connectedScreen(),
      { what: 'pressed', entry: long },
      { what: 'pressed', entry: note(2, { body: 'ü'.repeat(4_096) }) },
    )
    expect(state.setAside).toEqual([{ entry: long, why: 'tooLarge' }])
    expect(effects).toContainEqual({ do: 'keep', setAside: [{ entry: long, why: 'tooLarge' }] })
    expect(sent(effects)).toEqual([[2]])
  })

  it('S15: for the server even alone is set aside as too long', () => {
    const { state } = play(
      connectedScreen(),
      { what: 'pressed', entry: note(1) },
      { what: 'appendFailed', batch: 1, problem: problem('batchTooLarge') },
    )
    expect(state.setAside).toEqual([{ entry: note(1), why: 'tooLarge' }])
  })
})
