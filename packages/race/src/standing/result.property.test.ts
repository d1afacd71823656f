import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Distance } from './laps-and-sections.ts'
import { scoringOf, sumOf } from './sums.ts'
import { breakTie, type TieBreak } from './ties.ts'

const SECTIONS = 50
const added = scoringOf({ by: 'lapsAndSections', sections: 'added' }, SECTIONS)
const someDistances = fc.array(
  fc.record({ laps: fc.nat({ max: 2_000 }), sections: fc.nat({ max: SECTIONS - 1 }) }),
  { minLength: 1, maxLength: 24 },
)
const inSections = ({ laps, sections = 0 }: Distance) => laps * SECTIONS + sections

test('added distances are as many sections as all of them together, in any order', () => {
  fc.assert(
    fc.property(someDistances, (distances) => {
      const sum = sumOf(distances, added)
      expect(inSections(sum)).toBe(distances.reduce((all, one) => all + inSections(one), 0))
      expect(sum.sections).toBeLessThan(SECTIONS)
      expect(sumOf([...distances].reverse(), added)).toEqual(sum)
    }),
    { numRuns: 100 },
  )
})

test('whatever the order of criteria, nobody is lost or set apart from an equal', () => {
  const someOrder = fc.subarray<TieBreak>(['runOff', 'bestLap', 'bestSegment', 'countBack'])
  const someScores = fc.array(fc.tuple(fc.nat({ max: 2 }), fc.nat({ max: 2 })), { maxLength: 8 })
  fc.assert(
    fc.property(someOrder, someScores, (order, scores) => {
      const names = scores.map((_, place) => String(place))
      const by = (which: 0 | 1) => (a: string, b: string) =>
        (scores[Number(b)]?.[which] ?? 0) - (scores[Number(a)]?.[which] ?? 0)
      const known: { readonly [T in TieBreak]?: (a: string, b: string) => number } = {
        bestSegment: by(0),
        countBack: by(1),
      }
      const { groups } = breakTie(names, order, { compare: (tie) => known[tie] })
      expect(groups.flat().sort()).toEqual([...names].sort())
      // Up to the first criterion that is not known, those that stand together are equal by all.
      const unknown = order.findIndex((tie) => !known[tie])
      const asked = unknown < 0 ? order : order.slice(0, unknown)
      for (const group of groups) {
        for (const tie of asked) {
          const values = group.map((one) => known[tie]?.(group[0] ?? one, one))
          expect(new Set(values).size).toBeLessThanOrEqual(1)
        }
      }
    }),
    { numRuns: 100 },
  )
})
