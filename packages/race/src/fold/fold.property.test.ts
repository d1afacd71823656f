import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isUnread, readEntry } from '../entry/read.ts'
import { kinds } from '../entry/kinds/index.ts'
import { someLog, someStatement, someUnknown } from '../testing/arbitrary-log.ts'
import { fold } from './fold.ts'

describe('the fold of any log', () => {
  test('reads the arbitrary bodies of every kind', () => {
    const seen = new Set<string>()
    fc.assert(
      fc.property(someLog(), (log) => {
        for (const entry of log.map(readEntry)) {
          expect(isUnread(entry) ? entry.why : undefined).toBeUndefined()
          seen.add(entry.kind)
        }
      }),
      { numRuns: 200 },
    )
    expect([...seen].sort()).toEqual(Object.keys(kinds).sort())
  })

  test('L1: is the same in whatever order entries arrive', () => {
    const shuffled = someLog().chain((log) =>
      fc.record({
        log: fc.constant(log),
        order: fc.shuffledSubarray([...log], { minLength: log.length }),
      }),
    )
    fc.assert(
      fc.property(shuffled, ({ log, order }) => {
        expect(fold(order.map(readEntry))).toEqual(fold(log.map(readEntry)))
      }),
    )
  })

  test('L3: counts an entry that is given twice once', () => {
    const repeated = someLog().chain((log) =>
      fc.record({ log: fc.constant(log), again: fc.subarray([...log]) }),
    )
    fc.assert(
      fc.property(repeated, ({ log, again }) => {
        const twice = [...log, ...again].map(readEntry)
        expect(fold(twice)).toEqual(fold(log.map(readEntry)))
      }),
    )
  })
})

describe('the fold of any log, whatever is in it', () => {
  test('L4: is changed by entries of unknown kinds in its list of lines only', () => {
    const mixed = someLog(fc.oneof({ weight: 3, arbitrary: someStatement }, someUnknown))
    fc.assert(
      fc.property(mixed, (log) => {
        const withAll = fold(log.map(readEntry))
        const { problems: _all, record: all, ...facts } = withAll
        const known = log.map(readEntry).filter((entry) => !isUnread(entry))
        const { problems: _known, record, ...same } = fold(known)
        expect(facts).toEqual(same)
        expect(all.log.filter((line) => !isUnread(line.entry))).toEqual(record.log)
      }),
    )
  })

  test('L5: never throws', () => {
    fc.assert(
      fc.property(someLog(), (log) => {
        expect(() => fold(log.map(readEntry))).not.toThrow()
      }),
      { numRuns: 500 },
    )
  })

  test('L6: survives JSON', () => {
    fc.assert(
      fc.property(someLog(), (log) => {
        const state = fold(log.map(readEntry))
        expect(JSON.parse(JSON.stringify(state))).toStrictEqual(state)
      }),
    )
  })
})
