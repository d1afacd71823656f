import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, stop } from '../testing/judging.ts'

const rule = (every: number, tolerance: number) =>
  ({
    kind: 'stopRhythm',
    value: { everyMs: every * MINUTE, toleranceMs: tolerance * MINUTE },
  }) as const
const spans = [drive('Ana', 0, 60)]
const judge = (minutes: readonly number[], tolerance = 5) =>
  found({ spans, stops: minutes.map((minute) => stop(minute)), ...rule(20, tolerance) }).map(
    ({ verdict, unit, value, margin }) => {
      const per = unit === 'ms' ? MINUTE : 1
      return [verdict, value / per, margin / per]
    },
  )

test('rhythm: kept, just kept, broken', () => {
  // Every 20 min of 60: at 20 and at 40, not at the end.
  expect(judge([22, 39])).toEqual([['kept', 2, 3]])
  expect(judge([15, 45])).toEqual([['kept', 5, 0]])
  expect(judge([14, 40])).toEqual([['broken', 0, -1]])
  expect(judge([20, 38, 41])).toEqual([['broken', 2, -1]])
})

test('segments follow each other without what lies between them', () => {
  // Two segments of 60 min: 20 min into the second one is at 80 min of the race.
  const segments = [hour(), hour({ id: 'two', index: 1, startsAt: GREEN_AT + 90 * MINUTE })]
  const stops = [stop(40), stop(20, { segment: 'two', at: GREEN_AT + 110 * MINUTE })]
  expect(found({ spans, segments, stops, ...rule(40, 0) })).toMatchObject([
    { verdict: 'kept', value: 0, margin: 0 },
  ])
})

test('a rhythm that asks for more stops than a plan can hold is one finding', () => {
  // 60 min in steps of 1 s: 3599 before the end.
  const value = { everyMs: 1_000, toleranceMs: 0 }
  expect(found({ spans, stops: [stop(1)], kind: 'stopRhythm', value })).toMatchObject([
    {
      ...{ verdict: 'broken', limit: 3_599, value: 1 },
      sentence: 'The rhythm asks for 3599 stops, and there is one mandatory stop.',
    },
  ])
  expect(found({ spans, kind: 'stopRhythm', value: { everyMs: 0, toleranceMs: 0 } })).toEqual([])
})

test('in a race what is still ahead is open', () => {
  const after = (minutes: number) =>
    found({ spans: [drive('Ana', 0, minutes)], isWhole: false, ...rule(40, 5) })
  expect(after(45)).toMatchObject([{ verdict: 'open', value: 0 }])
  expect(after(46)).toMatchObject([
    {
      verdict: 'broken',
      sentence:
        'About 0:40 of the race there are no mandatory stops, exactly one is due, at most 0:05 early or late.',
    },
  ])
})
