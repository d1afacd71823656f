import type { MeetingCopy, Unsent } from '@pitlamp/contract'
import { fold, readEntry, type RecordedEntry } from '@pitlamp/race'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inLog, note, phone, wall } from '../log/entries.fixture.ts'
import { copy } from './copies.fixture.ts'
import { mergeCopies } from './merge-copies.ts'

/** Few enough ids that copies meet on them, now and then with other content. */
const someEntry = fc
  .record({
    device: fc.constantFrom(wall, phone),
    n: fc.integer({ min: 1, max: 6 }),
    body: fc.constantFrom('{"words":"a"}', '{"words":"a"}', '{"words":"b"}'),
  })
  .map(({ n, ...more }) => note(n, more))
const someRecorded: fc.Arbitrary<RecordedEntry> = fc
  .tuple(someEntry, fc.integer({ min: 1, max: 9 }))
  .map(([entry, seq]) => inLog(seq, entry))
const someUnsent: fc.Arbitrary<Unsent> = fc.record(
  {
    entry: someEntry,
    role: fc.constantFrom('crew', 'pitWall'),
    refused: fc.constant('roleMayNot'),
  },
  { requiredKeys: ['entry'] },
)
const someDrafts = fc.array(
  fc.record({
    document: fc.constantFrom('rules', 'plan'),
    version: fc.integer({ min: 1, max: 3 }),
    content: fc.string(),
  }),
  { maxLength: 3 },
)
const someCopy: fc.Arbitrary<MeetingCopy> = fc
  .record({
    asOf: fc.integer({ min: 1, max: 3 }),
    recorded: fc.uniqueArray(someRecorded, { selector: ({ seq }) => seq, maxLength: 8 }),
    unsent: fc.array(someUnsent, { maxLength: 5 }),
    people: fc.array(fc.record({ id: fc.constantFrom(wall, phone), name: fc.string() })),
    drafts: someDrafts,
  })
  .map(copy)
const someCopies = fc.array(someCopy, { minLength: 1, maxLength: 4 })
const shuffled = someCopies.chain((copies) =>
  fc.tuple(
    fc.constant(copies),
    fc.shuffledSubarray(copies, { minLength: copies.length }),
    fc.subarray(copies),
  ),
)
const idsIn = ({ recorded, unsent }: MeetingCopy) => [
  ...recorded.map(({ id }) => id),
  ...unsent.map(({ entry }) => entry.id),
]

describe('any copies of one meeting', () => {
  it('S33: are one and the same in any order, and given more than once', () => {
    fc.assert(
      fc.property(shuffled, ([copies, inOrder, again]) => {
        expect(mergeCopies([...inOrder, ...again])).toEqual(mergeCopies(copies))
      }),
    )
  })

  it('S33: merged already they merge to the same', () => {
    fc.assert(
      fc.property(someCopies, (copies) => {
        const [one] = mergeCopies(copies)
        expect(mergeCopies(one ? [one.copy] : []).map((again) => again.copy)).toEqual([one?.copy])
      }),
    )
  })

  it('S34: hold every id once, numbered without a gap', () => {
    fc.assert(
      fc.property(someCopies, (copies) => {
        const merged = mergeCopies(copies).map((one) => one.copy)
        const ids = merged.flatMap(idsIn)
        expect([...ids].sort()).toEqual([...new Set(copies.flatMap(idsIn))].sort())
        const numbers = merged.flatMap(({ recorded }) => recorded.map(({ seq }) => seq))
        expect(numbers).toEqual(numbers.map((_, place) => place + 1))
      }),
    )
  })

  it('S34: cut from one log they give that log back', () => {
    const log = Array.from({ length: 12 }, (_, place) =>
      inLog(place + 1, note(place + 1, { device: place % 3 === 0 ? phone : wall })),
    )
    const cuts = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 4 })
    fc.assert(
      fc.property(cuts, (ends) => {
        const longest = log.slice(0, Math.max(...ends))
        const [one] = mergeCopies(ends.map((end) => copy({ recorded: log.slice(0, end) })))
        expect(one).toMatchObject({ copy: { recorded: longest }, clashes: [] })
        const state = fold((one?.copy.recorded ?? []).map(readEntry))
        expect(state).toEqual(fold(longest.map(readEntry)))
      }),
    )
  })
})
