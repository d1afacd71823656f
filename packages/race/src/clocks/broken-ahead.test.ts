import { expect, test } from 'vitest'
import type { Finding } from '../checks/findings.ts'
import { newlyBroken } from './broken-ahead.ts'

/** Ana rests too little before a stint, unless it says otherwise. */
function breach(of: Partial<Finding>): Finding {
  const value = of.value ?? 20
  return {
    ...{ id: 'rest:atLeast', axis: 'meeting', called: 'Rest', verdict: 'broken', people: ['Ana'] },
    ...{ unit: 'ms', sense: 'atLeast', limit: 30, margin: value - 30, value, stops: [], spans: [] },
    sentence: `Rests ${value} of ${[...(of.spans ?? []), ...(of.stops ?? [])].join(' ')}.`,
    ...of,
  }
}

const firstRest = breach({ spans: ['a', 'b'] })
const secondRest = breach({ spans: ['b', 'c'] })

test('the same limit and person elsewhere is new, and it is the one that is named', () => {
  expect(newlyBroken([secondRest], [firstRest, secondRest])).toEqual([firstRest])
  expect(newlyBroken([firstRest], [firstRest, secondRest])).toEqual([secondRest])
})

test('it is new also where the one that was there is mended', () => {
  expect(newlyBroken([firstRest], [secondRest])).toEqual([secondRest])
})

test('what was there and grows is not new, with a span more or one less', () => {
  const grown = (...spans: readonly string[]) => breach({ spans, value: 10 })
  expect(newlyBroken([firstRest], [grown('a', 'b')])).toEqual([])
  expect(newlyBroken([firstRest], [grown('a', 'b', 'c')])).toEqual([])
  expect(newlyBroken([firstRest], [grown('b')])).toEqual([])
  // Two of the four that the two windows concern are in both.
  expect(newlyBroken([breach({ spans: ['a', 'b', 'c'] })], [grown('b', 'c', 'd')])).toEqual([])
})

test('another limit, or another person, is new', () => {
  const other = breach({ spans: ['a', 'b'], id: 'rest:shareOfStint' })
  expect(newlyBroken([firstRest], [other])).toEqual([other])
  const ben = breach({ spans: ['a', 'b'], people: ['Ben'], sentence: 'Ben rests 20.' })
  expect(newlyBroken([firstRest], [ben])).toEqual([ben])
})

test('what names neither span nor stop grows by its value, and lies elsewhere by its words', () => {
  const changes = (value: number) =>
    breach({ id: 'changes:atLeast', people: [], value, sentence: `There are ${value} changes.` })
  expect(newlyBroken([changes(4)], [changes(3)])).toEqual([])
  const window = (name: string) =>
    breach({ id: 'windows:served', people: [], value: 0, sentence: `None in ${name}.` })
  const [one, two] = [window('one'), window('two')]
  expect(newlyBroken([one], [two, one])).toEqual([two])
  expect(newlyBroken([one], [two])).toEqual([two])
})
