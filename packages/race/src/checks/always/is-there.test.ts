import { expect, test } from 'vitest'
import { drive, found, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (name: string, by: By) => found(by).filter(({ id }) => id.startsWith(`${name}:`))

test('everybody is there: all of a duty, just all, not all', () => {
  const spans = [drive('Ana', 10, 30), span({ person: 'Ana', duty: 'offDuty' }, 30, 60)]
  const there = (from: number, to: number) =>
    judge('isThere', { spans, there: { Ana: [[from, to]] } })
  expect(there(0, 60)).toEqual([])
  expect(there(10, 30)).toEqual([])
  // Ten minutes late and five too early away: 20 - 10 + 30 - 25 = 15.
  expect(verdicts(there(20, 25))).toEqual([['broken', 15, -15, 'Ana']])
  expect(sentences(there(20, 25))).toEqual([
    'Ana drives from 0:10 to 0:30 of segment 1 and is not there for 0:15 of it.',
  ])
})
