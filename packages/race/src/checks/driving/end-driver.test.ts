import { expect, test } from 'vitest'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const judge = (which: 'first' | 'last', may: 'must' | 'mayNot', isWhole = true) =>
  found({
    ...{ spans: [drive('Ana', 0, 30), drive('Ben', 30, 60)], isWhole },
    ...{ categories: { Ana: ['Novice'] }, kind: 'endDriver', value: { which, who: 'novice', may } },
  })

test('who drives first and last', () => {
  expect(verdicts(judge('first', 'must'))).toEqual([['kept', 1, 0, 'Ana']])
  expect(sentences(judge('first', 'mayNot'))).toEqual(['Ana drives first: a novice may not.'])
  expect(verdicts(judge('last', 'mayNot'))).toEqual([['kept', 0, 0, 'Ben']])
  expect(sentences(judge('last', 'must'))).toEqual(['Ben drives last: a novice must.'])
})

test('while the race goes on only the first is decided', () => {
  expect(judge('last', 'must', false)).toEqual([])
  expect(verdicts(judge('first', 'mayNot', false))).toEqual([['broken', 1, -1, 'Ana']])
})
