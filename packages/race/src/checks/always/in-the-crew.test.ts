import { expect, test } from 'vitest'
import { drive, found, marshal } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (name: string, by: By) => found(by).filter(({ id }) => id.startsWith(`${name}:`))

test('everybody is in the crew', () => {
  const spans = [drive('Ana', 0, 30), drive('Zoe', 30, 50), marshal('Zoe', 50, 60)]
  expect(judge('inTheCrew', { spans, crew: ['Ana', 'Zoe'] })).toEqual([])
  const strange = judge('inTheCrew', { spans, crew: ['Ana'] })
  expect(verdicts(strange)).toEqual([['broken', 2, -2, 'Zoe']])
  expect(sentences(strange)).toEqual(['Somebody not in the crew has 2 duties.'])
})
