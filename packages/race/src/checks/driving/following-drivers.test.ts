import { expect, test } from 'vitest'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const categories = { Ana: ['Novice'], Ben: ['novice'], Cara: ['expert'] }
const judge = (order: readonly string[], must: 'must' | 'mustNot', then: string) =>
  found({
    spans: order.map((person, index) => drive(person, index * 10, index * 10 + 10)),
    categories,
    kind: 'followingDrivers',
    value: { first: 'novice', must, then },
  })

test('after a novice no novice', () => {
  expect(verdicts(judge(['Ana', 'Cara', 'Ben', 'Cara'], 'mustNot', 'novice'))).toEqual([
    ['kept', 0, 0, 'Ana', 'Cara'],
  ])
  expect(sentences(judge(['Ana', 'Ben', 'Cara'], 'mustNot', 'novice'))).toEqual([
    'Ben drives after Ana from 0:10 of segment 1: after a novice a novice must not drive.',
  ])
})

test('after a novice an expert, each time', () => {
  expect(verdicts(judge(['Ana', 'Cara', 'Ben'], 'must', 'expert'))).toEqual([
    ['kept', 1, 0, 'Ana', 'Cara'],
  ])
  expect(verdicts(judge(['Ana', 'Cara', 'Ben', 'Ana'], 'must', 'expert'))).toEqual([
    ['broken', 0, -1, 'Ben', 'Ana'],
  ])
})

test('nobody follows themselves, and nobody of the category is nothing to judge', () => {
  expect(judge(['Ana', 'Ana'], 'mustNot', 'novice')).toEqual([])
  expect(judge(['Cara', 'Ana'], 'mustNot', 'novice')).toEqual([])
})
