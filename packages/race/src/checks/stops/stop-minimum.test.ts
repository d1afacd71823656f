import { expect, test } from 'vitest'
import { SECOND } from '../../testing/small-meeting.ts'
import { drive, found, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 60)]
const rule = (seconds: number) =>
  ({
    kind: 'stopMinimum',
    value: { minimumMs: seconds * SECOND, from: 'stopped', to: 'leaving' },
  }) as const

test('minimum stop: kept, just kept, broken', () => {
  const stops = [stop(20, { done: true, lastedMs: 45 * SECOND })]
  const judge = (seconds: number) =>
    found({ spans, stops, ...rule(seconds) }).map(({ verdict, value, margin }) => [
      verdict,
      value / SECOND,
      margin / SECOND,
    ])
  expect(judge(40)).toEqual([['kept', 45, 5]])
  expect(judge(45)).toEqual([['kept', 45, 0]])
  expect(judge(46)).toEqual([['broken', 45, -1]])
})

test('planned stops and such as are not mandatory have no minimum', () => {
  const stops = [stop(20), stop(30, { mandatory: false, done: true, lastedMs: 5 * SECOND })]
  expect(found({ spans, stops, ...rule(45) })).toEqual([])
})

test('it names the stop', () => {
  const stops = [stop(20, { done: true, lastedMs: 44_000 })]
  expect(found({ spans, stops, ...rule(45) })).toMatchObject([
    {
      stops: [stops[0]?.id],
      sentence: 'For the stop at 0:20 of segment 1 the car stood 0:00:44, at least 0:00:45.',
    },
  ])
})
