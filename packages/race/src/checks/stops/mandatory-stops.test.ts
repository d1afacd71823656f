import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 60)]
const rule = (count: number, per: 'segment' | 'race') =>
  ({ kind: 'mandatoryStops', value: { count, per } }) as const

test('mandatory stops in the race: kept, just kept, broken', () => {
  // Three stops, of which one is not mandatory.
  const stops = [stop(10), stop(20, { mandatory: false }), stop(40)]
  const judge = (count: number) =>
    found({ spans, stops, ...rule(count, 'race') }).map(({ verdict, value, margin }) => [
      verdict,
      value,
      margin,
    ])
  expect(judge(1)).toEqual([['kept', 2, 1]])
  expect(judge(2)).toEqual([['kept', 2, 0]])
  expect(judge(3)).toEqual([['broken', 2, -1]])
})

test('each segment the car runs in has its own, a sit-out none', () => {
  const later = { startsAt: GREEN_AT + 60 * MINUTE }
  const segments = [
    hour(),
    hour({ id: 'two', index: 1, ...later }),
    hour({ id: 'three', index: 2, ...later, lane: 'sitOut' }),
  ]
  const stops = [stop(10), stop(40), stop(10, { segment: 'two' })]
  expect(found({ spans, segments, stops, ...rule(2, 'segment') })).toMatchObject([
    {
      ...{ verdict: 'broken', value: 1 },
      sentence: 'In segment 2 there is one mandatory stop, at least 2.',
    },
  ])
})

test('in a race it is open until the segment is over', () => {
  const judge = (over: boolean) =>
    found({
      ...{ spans, stops: [stop(10)], isWhole: false },
      ...rule(2, 'segment'),
      segments: [hour({ over }), hour({ id: 'two', index: 1, startsAt: GREEN_AT + 60 * MINUTE })],
    }).map(({ verdict, value }) => [verdict, value])
  expect(judge(false)).toEqual([
    ['open', 1],
    ['open', 0],
  ])
  expect(judge(true)).toEqual([
    ['broken', 1],
    ['open', 0],
  ])
})
