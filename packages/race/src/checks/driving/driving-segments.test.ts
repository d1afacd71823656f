import { expect, test } from 'vitest'
import { found, hour, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const segments = [hour(), hour({ id: 'two', index: 1 }), hour({ id: 'three', index: 2 })]
const minutes = (segment: string, from: number, to: number) => (person: string) =>
  span(
    {
      ...{ person, duty: 'controller', segment },
      startsAfter: segments.findIndex(({ id }) => id === segment) * 60,
    },
    from,
    to,
  )

test('segments driven: kept, just kept, broken; twice in one counts once', () => {
  // Ana drives in one, two and three, in two twice; Ben in two.
  const spans = [
    minutes('one', 0, 60)('Ana'),
    minutes('two', 0, 20)('Ana'),
    minutes('two', 20, 40)('Ben'),
    minutes('two', 40, 60)('Ana'),
    minutes('three', 0, 60)('Ana'),
  ]
  const judge = (atLeast: number, atMost: number) =>
    found({ spans, segments, kind: 'drivingSegments', value: { atLeast, atMost } })
  expect(verdicts(judge(0, 4))).toEqual([
    ['kept', 1, 1, 'Ben'],
    ['kept', 3, 1, 'Ana'],
  ])
  expect(verdicts(judge(1, 3))).toEqual([
    ['kept', 1, 0, 'Ben'],
    ['kept', 3, 0, 'Ana'],
  ])
  expect(sentences(judge(2, 2))).toEqual([
    'Ben drives in one segment, at least 2.',
    'Ana drives in 3 segments, at most 2.',
  ])
})

test('in a race that goes on, too few are still open', () => {
  const value = { atLeast: 2 }
  const judge = (isWhole: boolean) =>
    verdicts(
      found({
        spans: [minutes('one', 0, 60)('Ana')],
        segments,
        isWhole,
        kind: 'drivingSegments',
        value,
      }),
    )
  expect(judge(false)).toEqual([['open', 1, -1, 'Ana']])
  expect(judge(true)).toEqual([['broken', 1, -1, 'Ana']])
})
