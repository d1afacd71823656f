import { describe, expect, it } from 'vitest'
import { inLog, meeting, note, phone, wall } from './entries.fixture.ts'
import { initialSync } from './initial.ts'
import { cursor } from './state.ts'

const theirs = (seq: number) => inLog(seq, note(seq, { device: phone }))
const kept = { device: wall, confirmed: [], pending: [], setAside: [] }

describe('a screen that starts', () => {
  it('S19: has the stored log up to its first gap, in any order it was read', () => {
    const [one, two, four] = [theirs(1), theirs(2), theirs(4)]
    const state = initialSync(meeting, { ...kept, confirmed: [four, two, one] })
    expect(state.confirmed).toEqual([one, two])
    expect(cursor(state)).toBe(2)
  })

  it('S19: has its outbox in order, and knows what is saved already', () => {
    const saved = { entry: note(1), recorded: inLog(1, note(1)) }
    const state = initialSync(meeting, { ...kept, pending: [{ entry: note(2) }, saved] })
    expect(state.pending).toEqual([saved, { entry: note(2) }])
  })

  it('S19: leaves out of the outbox what the log has or what was set aside', () => {
    const setAside = [{ entry: note(2), why: 'malformed' }] as const
    const state = initialSync(meeting, {
      ...kept,
      confirmed: [inLog(1, note(1))],
      pending: [{ entry: note(1) }, { entry: note(2) }, { entry: note(3) }],
      setAside,
    })
    expect(state.pending).toEqual([{ entry: note(3) }])
    expect(state.setAside).toEqual(setAside)
  })

  it('S5: asks for nothing before it is connected', () => {
    expect(initialSync(meeting, kept).connected).toBe(false)
  })
})
