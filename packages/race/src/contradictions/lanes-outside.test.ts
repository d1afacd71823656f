import { expect, test } from 'vitest'
import { lanesOutside } from './lanes-outside.ts'
import { rule, said } from './testing/looking.ts'

const tracks = (lanes: number | 'notKnownYet', colours?: string[]) =>
  rule('tracks', { tracks: 1, lanes, ...(colours ? { colours } : {}) })
const order = (sequence: number[], sitOutsAfter: number[] = []) =>
  rule('laneOrder', { moves: 'sequence', sequence, sitOutsAfter })

test('an order names lanes that are there', () => {
  expect(said(lanesOutside, [tracks(4), order([1, 3, 0, 4, 2], [2])])).toEqual([])
  const beyond = ['The order of lanes names lane 5. There are 4 lanes.']
  expect(said(lanesOutside, [tracks(4), order([1, 3, 5])])).toEqual(beyond)
  expect(said(lanesOutside, [tracks(4), order([1, 3], [5])])).toEqual(beyond)
  const two = rule('tracks', { tracks: 2, lanes: 4 })
  expect(said(lanesOutside, [two, order([1, 3, 5, 8])])).toEqual([])
})

test('each lane has one colour', () => {
  expect(said(lanesOutside, [tracks(2, ['red', 'white'])])).toEqual([])
  expect(said(lanesOutside, [tracks(3, ['red', 'white'])])).toEqual([
    'The lanes have 2 colours. There are 3 lanes.',
  ])
})

test('before the lanes are known nothing is said', () => {
  expect(said(lanesOutside, [tracks('notKnownYet', ['red']), order([9])])).toEqual([])
})
