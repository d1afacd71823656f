import { expect, test } from 'vitest'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const spans = [drive('Ana', 0, 20), drive('Ben', 20, 40), drive('Cara', 40, 60)]
const judge = (atLeast: number, atMost: number, isWhole = true) =>
  found({
    ...{ spans, isWhole, crew: ['Ana', 'Ben', 'Cara', 'Dan'] },
    ...{ kind: 'numberOfDrivers', value: { atLeast, atMost } },
  })

test('who drives is counted, not who is there: kept, just kept, broken', () => {
  const all = ['Ana', 'Ben', 'Cara']
  expect(verdicts(judge(2, 4))).toEqual([
    ['kept', 3, 1, ...all],
    ['kept', 3, 1, ...all],
  ])
  expect(verdicts(judge(3, 3))).toEqual([
    ['kept', 3, 0, ...all],
    ['kept', 3, 0, ...all],
  ])
  expect(sentences(judge(4, 2))).toEqual([
    'In the race there are 3 drivers, at least 4.',
    'In the race there are 3 drivers, at most 2.',
  ])
  expect(verdicts(judge(4, 3, false))).toEqual([
    ['open', 3, -1, ...all],
    ['kept', 3, 0, ...all],
  ])
})
