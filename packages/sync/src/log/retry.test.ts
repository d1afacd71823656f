import { describe, expect, it } from 'vitest'
import { connectedScreen, inLog, note, phone, play, screen, sent } from './entries.fixture.ts'

const setAside = [
  { entry: note(3), why: 'roleMayNot' },
  { entry: note(1), why: 'keepsFailing' },
] as const

describe('send again', () => {
  it('S16: puts everything back in the order of the device’s count', () => {
    const { state, effects } = play({ ...connectedScreen(), setAside }, { what: 'retrySetAside' })
    expect(state.setAside).toEqual([])
    expect(sent(effects)).toEqual([[1, 3]])
    expect(effects[0]).toEqual({ do: 'keep', pending: [{ entry: note(3) }, { entry: note(1) }] })
  })

  it('S16: puts back only what was named', () => {
    const { state } = play(screen({ setAside }), { what: 'retrySetAside', ids: [note(3).id] })
    expect(state.setAside.map(({ entry }) => entry.n)).toEqual([1])
    expect(state.pending.map(({ entry }) => entry.n)).toEqual([3])
  })

  it('S16: leaves what another device made, and what the log has under the same id', () => {
    const state = {
      ...connectedScreen([inLog(1, { ...note(1), body: '{}' })]),
      setAside: [
        { entry: note(9, { device: phone }), why: 'notInServersLog' },
        { entry: note(1), why: 'otherBody' },
      ] as const,
    }
    expect(play(state, { what: 'retrySetAside' })).toEqual({ state, effects: [] })
  })
})
