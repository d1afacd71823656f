import type { Move } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { dutyWords, moveWords, withDriver, withMove, withoutMove } from './moves.ts'

const planned: readonly Move[] = [
  { person: 'tamsin', duty: 'post', post: '4' },
  { person: 'imre', duty: 'wall' },
  { person: 'okello', duty: 'controller' },
  { person: 'solveig', duty: 'offDuty' },
]
const nameOf = (person: string) => person.charAt(0).toUpperCase() + person.slice(1)

test('moves read as sentences', () => {
  expect(planned.map((move) => moveWords(move, nameOf))).toEqual([
    'Tamsin to post 4',
    'Imre to the wall',
    'Okello drives',
    'Solveig off duty',
  ])
  expect(moveWords({ person: 'imre', duty: 'post' }, nameOf)).toBe('Imre marshals')
})

test('a duty reads as an order to whoever holds the phone', () => {
  expect(dutyWords('controller', undefined)).toBe('you drive')
  expect(dutyWords('post', '4')).toBe('post 4')
  expect(dutyWords('post', undefined)).toBe('marshal')
  expect(dutyWords('bench', undefined)).toBe('the bench')
})

test('another driver and the planned one swap what they were to do, in the same order', () => {
  expect(withDriver(planned, 'tamsin', 'solveig')).toEqual([
    { person: 'okello', duty: 'post', post: '4' },
    { person: 'imre', duty: 'wall' },
    { person: 'tamsin', duty: 'controller' },
    { person: 'solveig', duty: 'offDuty' },
  ])
})

test('without a plan the new driver drives and whoever drove steps down after', () => {
  expect(withDriver([], 'okello', 'solveig')).toEqual([
    { person: 'okello', duty: 'controller' },
    { person: 'solveig', duty: 'offDuty' },
  ])
  expect(withDriver([], 'okello', undefined)).toEqual([{ person: 'okello', duty: 'controller' }])
  expect(withDriver([], 'okello', 'okello')).toEqual([{ person: 'okello', duty: 'controller' }])
})

test('choosing the planned driver changes nothing', () => {
  expect(withDriver(planned, 'okello', 'solveig')).toBe(planned)
})

test('a move is changed in its place, added at the end, or taken out', () => {
  expect(withMove(planned, { person: 'imre', duty: 'bench' })[1]).toEqual({
    person: 'imre',
    duty: 'bench',
  })
  expect(withMove([], { person: 'imre', duty: 'bench' })).toEqual([
    { person: 'imre', duty: 'bench' },
  ])
  expect(withoutMove(planned, 'imre').map(({ person }) => person)).toEqual([
    'tamsin',
    'okello',
    'solveig',
  ])
})
