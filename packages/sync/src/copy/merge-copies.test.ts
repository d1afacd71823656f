import { describe, expect, it } from 'vitest'
import { inLog, meeting, note, phone, wall } from '../log/entries.fixture.ts'
import { copy } from './copies.fixture.ts'
import { mergeCopies } from './merge-copies.ts'

const ids = (entries: readonly { readonly id: string }[]) => entries.map(({ id }) => id)
const merged = (...copies: Parameters<typeof mergeCopies>[0]) => {
  const [one] = mergeCopies(copies)
  if (!one) throw new Error('There is no copy.')
  return one
}
const ofPhone = (n: number) => note(n, { device: phone })

describe('copies of one meeting', () => {
  it('S34: the longest log keeps its numbers, and what another one has follows on', () => {
    const longest = copy({ recorded: [inLog(1, note(1)), inLog(2, ofPhone(1)), inLog(3, note(2))] })
    // After a server was put back, number 2 was given once more.
    const other = copy({
      recorded: [inLog(1, note(1)), inLog(2, ofPhone(3)), inLog(3, ofPhone(2))],
    })
    const { recorded } = merged(other, longest).copy
    expect(recorded).toEqual([
      ...longest.recorded,
      { ...inLog(3, ofPhone(2)), seq: 4 },
      { ...inLog(2, ofPhone(3)), seq: 5 },
    ])
  })

  it('S34: a log with a gap counts up to it, and loses nothing beyond', () => {
    const { recorded } = merged(copy({ recorded: [inLog(1, note(1)), inLog(3, note(3))] })).copy
    expect(recorded).toEqual([inLog(1, note(1)), { ...inLog(3, note(3)), seq: 2 }])
  })

  it('S34: what nobody has sent comes once, each device’s in the order of its count', () => {
    const first = copy({ unsent: [{ entry: note(3), role: 'pitWall' }] })
    const second = copy({
      unsent: [
        { entry: note(3), role: 'pitWall' },
        { entry: note(2), role: 'pitWall' },
        { entry: ofPhone(1), role: 'crew' },
      ],
    })
    const { unsent } = merged(first, second).copy
    expect(unsent.map(({ entry }) => entry)).toEqual([note(2), note(3), ofPhone(1)])
  })

  it('S35: what one device still holds and another one has as recorded is recorded', () => {
    const kept = copy({ unsent: [{ entry: note(1), role: 'pitWall' }] })
    const known = copy({ recorded: [inLog(1, note(1))] })
    const { copy: one, clashes } = merged(kept, known)
    expect([one.recorded, one.unsent, clashes]).toEqual([[inLog(1, note(1))], [], []])
  })

  it('S35: names an entry that copies have with different content', () => {
    const changed = note(1, { body: '{"words":"another"}' })
    const other = copy({
      recorded: [inLog(1, changed)],
      unsent: [{ entry: ofPhone(1), role: 'crew' }],
    })
    const longest = copy({
      recorded: [inLog(1, note(1)), inLog(2, note(2))],
      unsent: [{ entry: { ...ofPhone(1), at: 7 }, role: 'crew' }],
    })
    const { copy: one, clashes } = merged(other, longest)
    expect(one.recorded).toEqual(longest.recorded)
    expect(clashes).toEqual([
      { entry: note(1).id, device: wall, n: 1, stands: 'recorded' },
      { entry: ofPhone(1).id, device: phone, n: 1, stands: 'unsent' },
    ])
  })

  it('S35: a refusal makes way for a device that does not know of it', () => {
    const refused = copy({ unsent: [{ entry: note(1), role: 'crew', refused: 'roleMayNot' }] })
    const again = copy({ unsent: [{ entry: note(1), role: 'pitWall' }] })
    const { copy: one, clashes } = merged(refused, again)
    expect([one.unsent, clashes]).toEqual([[{ entry: note(1), role: 'pitWall' }], []])
  })

  it('S36: the highest version of a draft counts, and the last name', () => {
    const draft = (version: number, content: string) =>
      ({ document: 'rules', version, content }) as const
    const early = copy({
      asOf: 1,
      people: [{ id: wall, name: 'Ida' }],
      devices: [{ id: phone, name: 'Phone' }],
      drafts: [draft(4, 'newer')],
    })
    const late = copy({
      asOf: 2,
      people: [{ id: wall, name: 'Ida Quill' }],
      drafts: [draft(3, 'older')],
    })
    const one = merged(early, late).copy
    expect(one.people).toEqual([{ id: wall, name: 'Ida Quill' }])
    expect(one.devices).toEqual([{ id: phone, name: 'Phone' }])
    expect(one.drafts).toEqual([draft(4, 'newer')])
    expect(one.asOf).toBe(2)
  })

  it('S33: copies of two meetings stay two', () => {
    const base = copy()
    const another = copy({ meeting: { ...base.meeting, id: phone }, recorded: [inLog(1, note(1))] })
    expect(
      mergeCopies([another, base]).map(({ copy: { meeting: of, recorded } }) => [
        of.id,
        ids(recorded),
      ]),
    ).toEqual([
      [meeting, []],
      [phone, [note(1).id]],
    ])
  })
})
