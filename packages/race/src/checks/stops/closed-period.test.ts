import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 60)]
type Value = { readonly firstMs?: number; readonly lastMs?: number }
const judge = (minute: number, { firstMs, lastMs }: Value, of: 'segment' | 'race' = 'segment') =>
  found({
    ...{ spans, stops: [stop(minute)] },
    kind: 'closedPeriod',
    value: { of, ...(firstMs === undefined ? {} : { firstMs }), ...(lastMs ? { lastMs } : {}) },
  }).map(({ verdict, value, margin }) => [verdict, value / MINUTE, margin / MINUTE])

test('closed at the beginning: kept, just kept, broken', () => {
  const firstMs = 10 * MINUTE
  expect(judge(15, { firstMs })).toEqual([['kept', 15, 5]])
  expect(judge(10, { firstMs })).toEqual([['kept', 10, 0]])
  expect(judge(9, { firstMs })).toEqual([['broken', 9, -1]])
})

test('closed at the end: kept, just kept, broken', () => {
  const lastMs = 10 * MINUTE
  // 60 − 45 = 15 min before the end.
  expect(judge(45, { lastMs })).toEqual([['kept', 15, 5]])
  expect(judge(50, { lastMs }, 'race')).toEqual([['kept', 10, 0]])
  expect(judge(51, { lastMs }, 'race')).toEqual([['broken', 9, -1]])
})

test('of the race, only its first segment has the beginning and its last one the end', () => {
  const segments = [
    hour(),
    hour({ id: 'two', index: 1, startsAt: GREEN_AT + 60 * MINUTE, name: 'Late' }),
  ]
  const stops = [stop(58), stop(2, { segment: 'two' }), stop(58, { segment: 'two' })]
  const closed = { firstMs: 5 * MINUTE, lastMs: 5 * MINUTE }
  const of = (value: 'segment' | 'race') =>
    found({ spans, segments, stops, kind: 'closedPeriod', value: { of: value, ...closed } })
      .filter(({ verdict }) => verdict === 'broken')
      .map(({ sentence }) => sentence)
  expect(of('race')).toEqual([
    'Between the stop at 0:58 of Late and the end of the race lies 0:02, at least 0:05.',
  ])
  expect(of('segment')).toEqual([
    'Between the stop at 0:02 of Late and the start of the segment lies 0:02, at least 0:05.',
    'Between the stop at 0:58 of segment 1 and the end of the segment lies 0:02, at least 0:05.',
    'Between the stop at 0:58 of Late and the end of the segment lies 0:02, at least 0:05.',
  ])
})

test('a stop that is not mandatory is free, and in a segment counted in laps there is no end to keep', () => {
  const value = { of: 'segment', lastMs: 10 * MINUTE } as const
  const stops = [stop(55, { mandatory: false })]
  expect(found({ spans, stops, kind: 'closedPeriod', value })).toEqual([])
  const { lengthMs: _lengthMs, endsAt: _endsAt, ...byLaps } = hour()
  expect(
    found({ spans, stops: [stop(55)], segments: [byLaps], kind: 'closedPeriod', value }),
  ).toEqual([])
})
