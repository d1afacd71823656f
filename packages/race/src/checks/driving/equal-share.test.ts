import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, hour, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

// Ten drivers, 24 h: eight drive 2:24, Ana less and Zoe as much more.
const day = [hour({ lengthMs: 1_440 * MINUTE })]
const ten = (least: number) => {
  const minutes = [least, ...Array.from({ length: 8 }, () => 144), 288 - least]
  let from = 0
  return minutes.map((length, index) => {
    from += length
    return drive('ABCDEFGHIJ'.charAt(index), from - length, from)
  })
}

test('equal time of ten drivers within 5 %: 2:16:48 to 2:31:12', () => {
  // 24 h charity karting, France 2004: equal time, ±5 %. 144 min × 0.95 = 136.8; × 1.05 = 151.2.
  const judge = (least: number) =>
    verdicts(
      found({
        spans: ten(least),
        segments: day,
        kind: 'equalShare',
        value: { of: 'time', tolerance: 50 },
      }),
    )
  expect(judge(140)).toEqual([
    ['kept', 140, 3.2, 'A'],
    ['kept', 148, 3.2, 'J'],
  ])
  expect(judge(136.8)).toEqual([
    ['kept', 136.8, 0, 'A'],
    ['kept', 151.2, 0, 'J'],
  ])
  // A second less for one is a second more for the other.
  expect(judge(136.8 - 1 / 60)).toMatchObject([
    ['broken', 136.8 - 1 / 60, -1 / 60, 'A'],
    ['broken', 151.2 + 1 / 60, -1 / 60, 'J'],
  ])
})

test('equal time within minutes, and the narrower of two tolerances', () => {
  // Two drivers of 60 min: 30 each; 5 % of it are 1.5 min.
  const judge = (until: number, tolerance?: number) =>
    verdicts(
      found({
        ...{ spans: [drive('Ana', 0, until), drive('Ben', until, 60)], kind: 'equalShare' },
        value: { of: 'time', tolerance, toleranceMs: 2 * MINUTE },
      }),
    ).map(([verdict]) => verdict)
  expect(judge(32)).toEqual(['kept', 'kept'])
  expect(judge(32, 50)).toEqual(['broken', 'broken'])
  expect(judge(31.5, 50)).toEqual(['kept', 'kept'])
})

test('what no millisecond divides is equal all the same', () => {
  // 100 ms among three: 33, 33 and 34.
  const spans = [
    drive('A', 0, 33 / MINUTE),
    drive('B', 33 / MINUTE, 66 / MINUTE),
    drive('C', 66 / MINUTE, 100 / MINUTE),
  ]
  const segments = [hour({ lengthMs: 100 })]
  const judged = found({ spans, segments, kind: 'equalShare', value: { of: 'time' } })
  expect(judged.map(({ verdict, limit }) => [verdict, limit])).toEqual([
    ['kept', 33],
    ['kept', 34],
  ])
})

test('sit-outs are not there to be shared, and a tolerance not known yet is not judged', () => {
  const segments = [hour(), hour({ id: 'two', index: 1, lane: 'sitOut' })]
  const spans = [drive('Ana', 0, 30), drive('Ben', 30, 60)]
  const judge = (value: { tolerance?: number | 'notKnownYet' }) =>
    found({ spans, segments, kind: 'equalShare', value: { of: 'time', ...value } })
  expect(judge({}).map(({ limit }) => limit / MINUTE)).toEqual([30, 30])
  expect(judge({ tolerance: 'notKnownYet' })).toEqual([])
})

const six = Array.from({ length: 6 }, (_, index) => hour({ id: `s${index}`, index }))
const bySegments = (drivers: string, segments = six) =>
  drivers
    .split(' ')
    .map((person, index) =>
      span({ person, duty: 'controller', segment: `s${index}`, startsAfter: index * 60 }, 0, 60),
    )
    .slice(0, segments.length)

test('the same number of segments: two drivers three of six each', () => {
  // Pairs series, Tarragona 2016: two drivers, the same number of segments each.
  const judge = (drivers: string) =>
    found({
      spans: bySegments(drivers),
      segments: six,
      kind: 'equalShare',
      value: { of: 'segments' },
    })
  expect(verdicts(judge('A B A B A B'))).toEqual([
    ['kept', 3, 0, 'A'],
    ['kept', 3, 0, 'A'],
  ])
  expect(sentences(judge('A B A A A B'))).toEqual([
    'B drives in 2 segments; shared equally among 2 drivers it is at least 3.',
    'A drives in 4 segments; shared equally among 2 drivers it is at most 3.',
  ])
})

test('six segments among four drivers cannot be equal: 1 is too few and 2 too many', () => {
  const judged = found({
    spans: bySegments('A B C D A B'),
    segments: six,
    kind: 'equalShare',
    value: { of: 'segments' },
  })
  // 6 ÷ 4 = 1.5, so at least 2 and at most 1.
  expect(verdicts(judged)).toEqual([
    ['broken', 1, -1, 'C'],
    ['broken', 1, -1, 'D'],
    ['broken', 2, -1, 'A'],
    ['broken', 2, -1, 'B'],
  ])
  // 34 % of tolerance: 1.5 × 0.66 = 0.99 to 1.5 × 1.34 = 2.01.
  const value = { of: 'segments', tolerance: 340 } as const
  expect(
    verdicts(found({ spans: bySegments('A B C D A B'), segments: six, kind: 'equalShare', value })),
  ).toEqual([
    ['kept', 1, 0, 'C'],
    ['kept', 2, 0, 'A'],
  ])
})

test('while the race goes on, segments are open either way', () => {
  const spans = bySegments('A A A A B')
  expect(
    verdicts(
      found({
        spans,
        segments: six,
        isWhole: false,
        kind: 'equalShare',
        value: { of: 'segments' },
      }),
    ),
  ).toEqual([
    ['open', 1, -2, 'B'],
    ['open', 4, -1, 'A'],
  ])
})
