import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

// Ana 25 min, Ben 20, Cara 15: 10 between most and least.
const spans = [drive('Ana', 0, 25), drive('Ben', 25, 45), drive('Cara', 45, 60)]
const judge = (atMost: number, isWhole = true) =>
  found({ spans, isWhole, kind: 'drivingSpread', value: { atMostMs: atMost * MINUTE } })

test('the spread: kept, just kept, broken', () => {
  expect(verdicts(judge(12))).toEqual([['kept', 10, 2, 'Ana', 'Cara']])
  expect(verdicts(judge(10))).toEqual([['kept', 10, 0, 'Ana', 'Cara']])
  expect(verdicts(judge(9))).toEqual([['broken', 10, -1, 'Ana', 'Cara']])
  expect(sentences(judge(9))).toEqual(['Ana drives 0:10 more than Cara, at most 0:09.'])
})

test('it is open while the race goes on, and nothing with one driver', () => {
  expect(verdicts(judge(9, false))).toEqual([['open', 10, -1, 'Ana', 'Cara']])
  const value = { atMostMs: 0 }
  expect(found({ spans: [drive('Ana', 0, 60)], kind: 'drivingSpread', value })).toEqual([])
})
