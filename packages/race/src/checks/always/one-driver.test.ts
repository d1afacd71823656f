import { expect, test } from 'vitest'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const judge = (from: number) =>
  found({ spans: [drive('Ana', 0, 30), drive('Ben', from, 60)] }).filter(
    ({ id }) => id === 'oneDriver:atOnce',
  )

test('one driver at a time', () => {
  expect(judge(31)).toEqual([])
  expect(judge(30)).toEqual([])
  expect(verdicts(judge(29))).toEqual([['broken', 1, -1, 'Ana', 'Ben']])
  expect(sentences(judge(29))).toEqual(['Ana and Ben both drive, from 0:29 to 0:30 of segment 1.'])
})

test('a stint within another is found with one after it as well', () => {
  const spans = [drive('Ana', 0, 60), drive('Ben', 10, 20), drive('Cara', 30, 40)]
  const pairs = found({ spans })
    .filter(({ id }) => id === 'oneDriver:atOnce')
    .map(({ people }) => people)
  expect(pairs).toEqual([
    ['Ana', 'Ben'],
    ['Ana', 'Cara'],
  ])
})
