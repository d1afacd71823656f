import { expect, it } from 'vitest'
import { againstWords, costWords, lapsWords, standingWords, sureWords } from './work-words.ts'

it('laps are whole, grouped, and tenths below one', () => {
  expect([2_486.4, 1.2, 0.34, 0].map(lapsWords)).toEqual([
    ...['2,486 laps', '1 lap', '0.3 laps', '0 laps'],
  ])
})

it('best is said with proof only', () => {
  expect(sureWords({ as: 'plan', proof: 'best', gapLaps: 0 })).toMatch(/^The best/)
  expect(sureWords({ as: 'plan', proof: 'bestOnGrid', gapLaps: 0 })).toMatch(
    /^The best with stops at these/,
  )
  expect(sureWords({ as: 'plan', proof: 'within', gapLaps: 3.7 })).toBe(
    'No plan is more than 4 laps better.',
  )
  expect(sureWords({ as: 'plan', proof: 'within' })).toBe(
    'How far it is from the best is not known.',
  )
})

it('of fewest changes nothing is said about laps', () => {
  expect(sureWords({ as: 'fewestChanges', proof: 'bestOnGrid', gapLaps: 0 })).toBe(
    'No plan changes less.',
  )
})

it('a difference smaller than what is known is none', () => {
  const band = { laps: 4, fromLaps: -2, toLaps: 10 }
  expect(
    againstWords({ ...band, noRealDifference: true, fairer: 'this' }, 'the plan as it stands'),
  ).toBe('No real difference in laps to the plan as it stands. This one shares more evenly.')
  const clear = { laps: -12, fromLaps: -20, toLaps: -4, noRealDifference: false }
  expect(againstWords(clear, 'the plan as it stands')).toBe(
    '12 laps fewer than the plan as it stands, 4 to 20.',
  )
})

it('how far it has come, and what a rule costs', () => {
  expect(standingWords(undefined)).toBe('Waiting for the solver.')
  expect(standingWords({ kind: 'working', on: 'plan', boundLaps: 90_000 })).toBe('No plan yet.')
  expect(
    standingWords({ kind: 'working', on: 'plan', incumbentLaps: 1_190.2, boundLaps: 1_204 }),
  ).toBe('The best so far is worth 1,190 laps, at most 1,204 are possible.')
  const cost = (least: number, most: number) =>
    costWords({ kind: 'cost', id: 'r', sentence: 'A rule.', laps: { least, most } })
  expect([cost(0, 0.2), cost(3, 3.2), cost(2, 9)]).toEqual(['nothing', '3 laps', '2 to 9 laps'])
})
