import { problem } from '@pitlamp/contract'
import { describe, expect, it } from 'vitest'
import {
  answer,
  connectedScreen,
  inLog,
  note,
  play,
  pushOf,
  saved,
  sent,
} from './entries.fixture.ts'
import type { SyncEvent } from './events.ts'
import { cursor } from './state.ts'
import { savedState, view } from './view.ts'

const press = (n: number): SyncEvent => ({ what: 'pressed', entry: note(n) })
const recordedAs = (seq: number, n: number) => inLog(seq, note(n))

describe('a saved entry', () => {
  it('S8: is shown as saved and not sent again, and the cursor stays', () => {
    const { state, effects } = play(connectedScreen(), press(1), answer(1, saved(3, note(1))))
    expect(savedState(state, note(1).id)).toBe('saved')
    expect(cursor(state)).toBe(0)
    expect(sent(effects)).toEqual([[1]])
    expect(effects).toContainEqual({
      do: 'keep',
      pending: [{ entry: note(1), recorded: recordedAs(3, 1) }],
    })
  })

  it('S8: stays in view as the server recorded it until the log has it', () => {
    const { state } = play(connectedScreen(), press(1), answer(1, saved(1, note(1))))
    expect(view(state)).toEqual([recordedAs(1, 1)])
    const arrived = play(state, pushOf(0, recordedAs(1, 1))).state
    expect(view(arrived)).toEqual([recordedAs(1, 1)])
    expect(arrived.pending).toEqual([])
  })

  it('S8: a duplicate is as good as recorded', () => {
    const { id } = note(1)
    const duplicate = { outcome: 'duplicate', id, seq: 4, recordedAt: 9, role: 'crew' } as const
    const { state } = play(connectedScreen(), press(1), answer(1, duplicate))
    expect(savedState(state, note(1).id)).toBe('saved')
    expect(state.setAside).toEqual([])
  })

  it('S9: that came by push before its answer is settled by the push', () => {
    const { state, effects } = play(connectedScreen(), press(1), pushOf(0, recordedAs(1, 1)))
    expect(state.pending).toEqual([])
    expect(effects.at(-1)).toEqual({
      do: 'keep',
      confirmed: [recordedAs(1, 1)],
      settled: [note(1).id],
    })
    expect(play(state, answer(1, saved(1, note(1))))).toEqual({ state, effects: [] })
  })

  it('S9: the next batch waits for no answer once all of the last one has arrived', () => {
    const { effects } = play(connectedScreen(), press(1), press(2), pushOf(0, recordedAs(1, 1)))
    expect(sent(effects)).toEqual([[1], [2]])
  })

  it('S9: another entry under its id in the log sets it aside, and the log’s stands', () => {
    const other = { ...recordedAs(1, 1), body: '{"words":"other"}' }
    const { state, effects } = play(connectedScreen(), press(1), pushOf(0, other))
    expect(state.setAside).toEqual([{ entry: note(1), why: 'otherBody' }])
    expect(effects.at(-1)).toMatchObject({ setAside: [{ why: 'otherBody' }] })
    expect(view(state)).toEqual([other])
  })
})

describe('answers that do not fit', () => {
  it('S4: a second answer to the same batch changes nothing', () => {
    const { state } = play(connectedScreen(), press(1), answer(1, saved(1, note(1))))
    expect(play(state, answer(1, saved(9, note(1))))).toEqual({ state, effects: [] })
  })

  it('S4: a late failure of an earlier batch does not disturb the present one', () => {
    const { state } = play(connectedScreen(), press(1), answer(1, saved(1, note(1))), press(2))
    expect(play(state, { what: 'appendFailed', batch: 1 })).toEqual({ state, effects: [] })
  })

  it('S10: an answer that names another entry, or too few, answers nothing', () => {
    const { state } = play(connectedScreen(), press(1), answer(1, saved(1, note(2))))
    expect(savedState(state, note(1).id)).toBe('keptOnThisDevice')
    const silent = play(connectedScreen(), press(1), answer(1))
    expect(silent.effects.at(-1)).toEqual({ do: 'wait', forMs: 1_000, before: 'sending' })
  })
})

describe('a lost answer', () => {
  it('S10: leads to the same entries again after a pause', () => {
    const { state, effects } = play(connectedScreen(), press(1), { what: 'appendFailed', batch: 1 })
    expect(effects.at(-1)).toEqual({ do: 'wait', forMs: 1_000, before: 'sending' })
    expect(sent(play(state, { what: 'waited', before: 'sending' }).effects)).toEqual([[1]])
  })

  it('S10: with the connection leads to the same entries on the next one', () => {
    const { effects } = play(
      connectedScreen(),
      press(1),
      { what: 'disconnected' },
      { what: 'connected', last: 0 },
    )
    expect(sent(effects)).toEqual([[1], [1]])
  })
})

describe('a server that cannot save just now', () => {
  it.each(['notSaved', 'tooManyRequests'] as const)(
    'S11: %s counts against no entry',
    (refusal) => {
      let { state } = play(connectedScreen(), press(1))
      for (let batch = 1; batch <= 20; batch += 1) {
        const failed = play(state, { what: 'appendFailed', batch, problem: problem(refusal) })
        expect(failed.effects).toEqual([{ do: 'wait', forMs: 2_000, before: 'sending' }])
        state = play(failed.state, { what: 'waited', before: 'sending' }).state
      }
      expect(savedState(state, note(1).id)).toBe('keptOnThisDevice')
      expect(state.setAside).toEqual([])
    },
  )

  it('S11: nor does it when the answer says so entry by entry', () => {
    const refused = { outcome: 'refused', id: note(1).id, refusal: 'notSaved' } as const
    const { state, effects } = play(connectedScreen(), press(1), answer(1, refused))
    expect(state.setAside).toEqual([])
    expect(effects.at(-1)).toEqual({ do: 'wait', forMs: 2_000, before: 'sending' })
  })
})

describe('a refused entry', () => {
  it('S12: is set aside with its reason while its neighbours are saved', () => {
    const start = play(connectedScreen(), press(1), press(2), press(3)).state
    const first = play(start, answer(1, saved(1, note(1))))
    expect(sent(first.effects)).toEqual([[2, 3]])
    const refused = {
      outcome: 'refused',
      id: note(2).id,
      refusal: 'malformed',
      detail: 'words: too long',
    } as const
    const { state, effects } = play(first.state, answer(2, refused, saved(2, note(3))))
    const aside = [{ entry: note(2), why: 'malformed', detail: 'words: too long' }]
    expect(state.setAside).toEqual(aside)
    expect(effects).toContainEqual({ do: 'keep', setAside: aside })
    expect(savedState(state, note(2).id)).toBe('refused')
    expect(savedState(state, note(3).id)).toBe('saved')
  })

  it('S12: is left out of the fold', () => {
    const refused = { outcome: 'refused', id: null, refusal: 'roleMayNot' } as const
    const { state } = play(connectedScreen(), press(1), answer(1, refused))
    expect(view(state)).toEqual([])
  })

  it('S12: a device taken out of the team has its whole batch set aside at once', () => {
    const { state } = play(
      { ...connectedScreen(), pending: [{ entry: note(1) }, { entry: note(2) }] },
      press(3),
      { what: 'appendFailed', batch: 1, problem: problem('revoked') },
    )
    expect(state.setAside.map(({ entry, why }) => [entry.n, why])).toEqual([
      [1, 'revoked'],
      [2, 'revoked'],
      [3, 'revoked'],
    ])
  })
})

describe('a device that has to join again or reload', () => {
  it.each(['notJoined', 'otherProtocol'] as const)('S17: stops at %s until it connects', (why) => {
    const { state, effects } = play(
      connectedScreen(),
      press(1),
      { what: 'appendFailed', batch: 1, problem: problem(why) },
      press(2),
      { what: 'waited', before: 'sending' },
    )
    expect(state.stopped).toBe(why)
    expect(sent(effects)).toEqual([[1]])
    expect(state.pending.map(({ entry }) => entry.n)).toEqual([1, 2])
    const again = play(state, { what: 'disconnected' }, { what: 'connected', last: 0 })
    expect(sent(again.effects)).toEqual([[1, 2]])
    expect(again.state.stopped).toBeUndefined()
  })

  it('S17: stops as well when the answer says so entry by entry', () => {
    const refused = { outcome: 'refused', id: note(1).id, refusal: 'notJoined' } as const
    const { state } = play(connectedScreen(), press(1), answer(1, refused))
    expect(state.stopped).toBe('notJoined')
    expect(state.pending).toHaveLength(1)
  })
})
