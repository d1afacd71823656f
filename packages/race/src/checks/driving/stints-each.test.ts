import { expect, test } from 'vitest'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

// Ana has three stints, Ben two.
const spans = ['Ana', 'Ben', 'Ana', 'Ben', 'Ana'].map((person, index) =>
  drive(person, index * 12, index * 12 + 12),
)
const judge = (atLeast: number, atMost: number, isWhole = true) =>
  found({ spans, isWhole, kind: 'stintsEach', value: { atLeast, atMost } })

test('stints of each: kept, just kept, broken', () => {
  expect(verdicts(judge(1, 4))).toEqual([
    ['kept', 2, 1, 'Ben'],
    ['kept', 3, 1, 'Ana'],
  ])
  expect(verdicts(judge(2, 3))).toEqual([
    ['kept', 2, 0, 'Ben'],
    ['kept', 3, 0, 'Ana'],
  ])
  expect(sentences(judge(3, 2))).toEqual([
    'Ben has 2 stints, at least 3.',
    'Ana has 3 stints, at most 2.',
  ])
  expect(verdicts(judge(3, 2, false))).toEqual([
    ['open', 2, -1, 'Ben'],
    ['broken', 3, -1, 'Ana'],
  ])
})
