import { expect, test } from 'vitest'
import { drive, found, marshal } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const judge = (duty: 'controller' | 'post') =>
  found({
    spans: [
      drive('Ana', 0, 20),
      drive('Ben', 20, 60),
      marshal('Ben', 5, 10),
      marshal('Ben', 12, 20),
    ],
    categories: { Ana: ['captain'], Ben: ['Junior'] },
    kind: 'mayNotDo',
    value: { who: 'junior', duty },
  })

test('a category kept from a duty', () => {
  expect(verdicts(judge('post'))).toEqual([['broken', 2, -2, 'Ben']])
  expect(sentences(judge('post'))).toEqual([
    'Ben marshals from 0:05 of segment 1: a junior may not.',
  ])
  expect(sentences(judge('controller'))).toEqual([
    'Ben drives from 0:20 of segment 1: a junior may not.',
  ])
})

test('who keeps from it keeps the rule', () => {
  const value = { who: 'captain', duty: 'post' } as const
  const spans = [drive('Ana', 0, 60)]
  expect(
    sentences(found({ spans, categories: { Ana: ['Captain'] }, kind: 'mayNotDo', value })),
  ).toEqual(['Ana does not marshal: a captain may not.'])
})
