import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found } from '../testing/judging.ts'

test('driving time: kept, just kept, broken', () => {
  // Ana drives 30 + 10 = 40 min, Ben 20 min.
  const spans = [drive('Ana', 0, 30), drive('Ben', 30, 50), drive('Ana', 50, 60)]
  const judge = (atLeast: number, atMost: number) =>
    found({
      spans,
      kind: 'drivingTime',
      value: { atLeastMs: atLeast * MINUTE, atMostMs: atMost * MINUTE },
    }).map(({ verdict, value, margin, people }) => [
      verdict,
      value / MINUTE,
      margin / MINUTE,
      ...people,
    ])
  expect(judge(15, 45)).toEqual([
    ['kept', 20, 5, 'Ben'],
    ['kept', 40, 5, 'Ana'],
  ])
  expect(judge(20, 40)).toEqual([
    ['kept', 20, 0, 'Ben'],
    ['kept', 40, 0, 'Ana'],
  ])
  expect(judge(21, 39)).toEqual([
    ['broken', 20, -1, 'Ben'],
    ['broken', 40, -1, 'Ana'],
  ])
})

test('driving time of a category concerns its people only', () => {
  const [finding] = found({
    spans: [drive('Ana', 0, 30), drive('Ben', 30, 60)],
    kind: 'drivingTime',
    value: { who: 'novice', atMostMs: 20 * MINUTE },
    categories: { Ben: ['Novice'] },
  })
  expect(finding).toMatchObject({
    verdict: 'broken',
    people: ['Ben'],
    sentence: 'Ben drives 0:30, at most 0:20.',
  })
})
