import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { SENTENCES } from '../sentences/index.ts'
import { contradictions } from './index.ts'
import { HOUR, MINUTE, rule, segment } from './testing/looking.ts'

const regulations = (rules: readonly Rule[]) => ({
  ...{ name: 'By hand', timeZone: 'Europe/Dublin', rules: [...rules] },
  programme: [segment('s1'), segment('s2')],
})
const crew = {
  people: [
    { id: 'ana', name: 'Ana', duties: [], categories: ['Captain'] },
    { id: 'ben', name: 'Ben', duties: [], categories: ['Novice'] },
    { id: 'cara', name: 'Cara', duties: [] },
  ],
}

test('a fresh rule of every kind, all of them together, contradicts nothing', () => {
  const fresh = Object.entries(SENTENCES).map(
    ([kind, { start }]) => ({ id: kind, kind, value: start }) as Rule,
  )
  expect(fresh.length).toBeGreaterThan(50)
  expect(contradictions(regulations(fresh), crew)).toEqual([])
})

test('rules that can be kept contradict nothing, and ids are told apart where several cannot', () => {
  const kept = [
    rule('drivingTime', { atLeastMs: 30 * MINUTE, atMostMs: HOUR }),
    rule('driverRest', { atLeastMs: 20 * MINUTE, marshalling: 'isRest' }),
    rule('continuousDriving', { atMostMs: 20 * MINUTE }),
  ]
  expect(contradictions(regulations(kept), crew)).toEqual([])
  const broken = [
    rule('drivingTime', { atLeastMs: 2 * HOUR, atMostMs: 30 * MINUTE }),
    rule('numberOfDrivers', { atLeast: 4 }),
  ]
  const found = contradictions(regulations(broken), crew)
  // Least above most; 4 × 2 h of 2 h; 3 × 0:30 of 2 h; four drivers of three people.
  expect(found.map(({ id }) => id)).toEqual([
    'leastAboveMost:drivingTime:drivingTime',
    'leastTogether:numberOfDrivers:drivingTime',
    'mostTogether:drivingTime',
    'tooFewPeople:numberOfDrivers',
  ])
})

test('without rules and crew there is nothing to contradict', () => {
  expect(contradictions(regulations([]), { people: [] })).toEqual([])
})
