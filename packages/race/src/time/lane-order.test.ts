import { expect, test } from 'vitest'
import type { Rule, RuleValue } from '../rules/index.ts'
import { roundOf } from './lane-order.ts'

const round = (lanes: number, order: RuleValue<'laneOrder'>, tracks = 1) =>
  roundOf([
    { id: 'tracks', kind: 'tracks', value: { tracks, lanes } },
    { id: 'order', kind: 'laneOrder', value: order },
  ])

test('odd lanes go up, even lanes come down', () => {
  expect(round(4, { moves: 'oddUpEvenDown' })).toEqual([1, 3, 4, 2])
  expect(round(5, { moves: 'oddUpEvenDown' })).toEqual([1, 3, 5, 4, 2])
  expect(round(6, { moves: 'oddUpEvenDown' })).toEqual([1, 3, 5, 6, 4, 2])
  expect(round(8, { moves: 'oddUpEvenDown' })).toEqual([1, 3, 5, 7, 8, 6, 4, 2])
})

test('a segment is sat out after the lanes the rules name, two where one is named twice', () => {
  const out = 'sitOut'
  expect(round(6, { moves: 'oddUpEvenDown', sitOutsAfter: [5, 2] })).toEqual([
    ...[1, 3, 5, out, 6, 4, 2, out],
  ])
  expect(round(4, { moves: 'oddUpEvenDown', sitOutsAfter: [2, 2] })).toEqual([1, 3, 4, 2, out, out])
})

test('a sequence is taken as it stands, 0 for a segment sat out', () => {
  expect(round(4, { moves: 'sequence', sequence: [2, 4, 0, 1, 3] })).toEqual([2, 4, 'sitOut', 1, 3])
})

test('on several tracks lanes are counted on', () => {
  // Six of the first track, then 6 more each on the second.
  expect(round(6, { moves: 'oddUpEvenDown' }, 2)).toEqual([1, 3, 5, 6, 4, 2, 7, 9, 11, 12, 10, 8])
})

test('groups go round as the rules say, odd up and even down where they say nothing', () => {
  expect(round(4, { moves: 'groups', groups: 2 })).toEqual([1, 3, 4, 2])
  expect(round(4, { moves: 'groups', groups: 2, sequence: [1, 2, 3, 4] })).toEqual([1, 2, 3, 4])
})

test('what is not known has no order', () => {
  const tracks: Rule = { id: 'tracks', kind: 'tracks', value: { tracks: 1, lanes: 'notKnownYet' } }
  const order = (moves: 'oddUpEvenDown' | 'notKnownYet'): Rule => {
    return { id: 'order', kind: 'laneOrder', value: { moves } }
  }
  expect(roundOf([tracks, order('oddUpEvenDown')])).toBeUndefined()
  expect(roundOf([order('notKnownYet')])).toBeUndefined()
  expect(roundOf([tracks])).toBeUndefined()
  expect(round(6, { moves: 'sequence' })).toBeUndefined()
  // No hall has a thousand lanes.
  expect(round(1_000, { moves: 'oddUpEvenDown' })).toBeUndefined()
})
