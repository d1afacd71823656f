import { expect, test } from 'vitest'
import { MINUTE, SECOND } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 30), drive('Ben', 30, 60)]
const inTime = (full: number, leftAtEnd?: number) =>
  ({
    kind: 'energy',
    value: {
      fullMs: full * MINUTE,
      atEmpty: 'stands',
      ...(leftAtEnd === undefined ? {} : { leftAtEnd }),
    },
  }) as const

test('a full load in time: kept, just kept, broken', () => {
  // Stops at 20 and 45: 20, 25 and 15 min on one load.
  const stops = [stop(20), stop(45, { mandatory: false })]
  const judge = (full: number) =>
    found({ spans, stops, ...inTime(full) }).map(({ verdict, value, margin }) => [
      verdict,
      value / MINUTE,
      margin / MINUTE,
    ])
  expect(judge(30)).toEqual([['kept', 25, 5]])
  expect(judge(25)).toEqual([['kept', 25, 0]])
  expect(judge(24)).toEqual([['broken', 25, -1]])
})

test('each segment begins with a full load, a sit-out needs none', () => {
  const later = { startsAt: GREEN_AT + 60 * MINUTE }
  const segments = [
    hour(),
    hour({ id: 'two', index: 1, ...later, lengthMs: 20 * MINUTE }),
    hour({ id: 'three', index: 2, ...later, lengthMs: 90 * MINUTE, lane: 'sitOut' }),
  ]
  expect(found({ spans, segments, ...inTime(60) })).toMatchObject([
    { verdict: 'kept', value: 60 * MINUTE, margin: 0 },
  ])
})

test('what must be left at the end shortens the last load', () => {
  // 90 % of 20 min is 18 min; from 45 to 60 are 15 min, from 41 to 60 are 19.
  const judge = (last: number) =>
    found({ spans, stops: [stop(20), stop(30), stop(last)], ...inTime(20, 100) })
      .filter(({ id }) => id.endsWith('AtEnd'))
      .map(({ verdict, limit, value }) => [verdict, limit / MINUTE, value / MINUTE])
  expect(judge(45)).toEqual([['kept', 18, 15]])
  expect(judge(41)).toEqual([['broken', 18, 19]])
})

test('laps are estimated from the paces of the crew, rounded against us', () => {
  // To the stop at 40: Ana 30 min at 9 s = 200 laps, Ben 10 min at 7 s = 85.7, which makes 86.
  const judge = (fullLaps: number, paces: Readonly<Record<string, number>>) =>
    found({
      ...{ spans, stops: [stop(40)], paces },
      kind: 'energy',
      value: { fullLaps, atEmpty: 'slows' },
    })
  const both = { Ana: 9 * SECOND, Ben: 7 * SECOND }
  expect(judge(286, both)).toMatchObject([{ verdict: 'kept', value: 286, margin: 0 }])
  expect(judge(285, both)).toMatchObject([
    {
      verdict: 'broken',
      sentence:
        'On one load the car runs about 286 laps from 0:00 of segment 1, at most 285: an estimate from the paces entered.',
    },
  ])
  // Only what Ben drives alone, 20 min at 7 s = 171.4, can be said without Ana's pace.
  expect(judge(285, { Ben: 7 * SECOND })).toMatchObject([{ verdict: 'kept', value: 172 }])
  expect(judge(285, {})).toEqual([])
})

test('a race is judged as far as it has come', () => {
  const judge = (minutes: number) =>
    found({ spans: [drive('Ana', 0, minutes)], isWhole: false, ...inTime(20) })
  expect(judge(20)).toMatchObject([{ verdict: 'kept', value: 20 * MINUTE }])
  expect(judge(21)).toMatchObject([
    {
      verdict: 'broken',
      sentence: 'On one load the car runs 0:21 from 0:00 of segment 1, at most 0:20.',
    },
  ])
})
