import { describe, expect, it } from 'vitest'
import { connectedScreen, inLog, note, phone, play, screen, sent } from './entries.fixture.ts'
import { savedState, setAsideSentence, unsentCount, view } from './view.ts'

describe('a press', () => {
  it('S6: is in view and kept on this device at once', () => {
    const { state, effects } = play(screen(), { what: 'pressed', entry: note(1) })
    expect(view(state)).toEqual([note(1)])
    expect(savedState(state, note(1).id)).toBe('keptOnThisDevice')
    expect(unsentCount(state)).toBe(1)
    expect(effects).toEqual([])
  })

  it('S6: waits in the order of the device’s count', () => {
    const { effects } = play(
      screen(),
      { what: 'pressed', entry: note(2) },
      { what: 'pressed', entry: note(1) },
      { what: 'connected', last: 0 },
    )
    expect(sent(effects)).toEqual([[1, 2]])
  })

  it('S6: told twice is one, whether it waits, was set aside or is in the log', () => {
    const states = [
      screen({ pending: [{ entry: note(1) }] }),
      screen({ setAside: [{ entry: note(1), why: 'malformed' }] }),
      connectedScreen([inLog(1, note(1))]),
    ]
    for (const state of states) {
      expect(play(state, { what: 'pressed', entry: note(1) })).toEqual({ state, effects: [] })
    }
  })
})

describe('what the fold is given', () => {
  it('S20: the log, what waits, and what was set aside without being refused', () => {
    const state = screen({
      confirmed: [inLog(1, note(1))],
      pending: [{ entry: note(2) }, { entry: note(3), recorded: inLog(2, note(3)) }],
      setAside: [
        { entry: note(4), why: 'keepsFailing' },
        { entry: note(5, { device: phone }), why: 'notInServersLog' },
        { entry: note(6), why: 'roleMayNot' },
      ],
    })
    expect(view(state).map(({ n }) => n)).toEqual([1, 2, 3, 4, 5])
    // On this device only: 2 waits, 4 and 6 were set aside; 3 is saved, 5 is another device's.
    expect(unsentCount(state)).toBe(3)
  })

  it('S20: is the same objects from call to call, so that each is read once', () => {
    const state = screen({ pending: [{ entry: note(3), recorded: inLog(2, note(3)) }] })
    expect(view(state)[0]).toBe(view(state)[0])
  })

  it('S20: an entry nobody has seen has no standing', () => {
    expect(savedState(screen(), note(1).id)).toBeUndefined()
  })

  it('S12: every reason has a sentence', () => {
    const reasons = ['keepsFailing', 'notInServersLog', 'roleMayNot'] as const
    expect(new Set(reasons.map(setAsideSentence)).size).toBe(3)
  })
})
