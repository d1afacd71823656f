import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { found, GREEN_AT, hour, stop } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const also = [
  {
    id: 'minimum',
    kind: 'stopMinimum',
    value: { minimumMs: MINUTE, from: 'stopped', to: 'leaving' },
  } as const,
]
const judge = (stops: Parameters<typeof found>[0]['stops'], atLeast: number) =>
  found({
    ...{ spans: [], stops, also, segments: [hour(), hour({ id: 'two', index: 1 })] },
    ...{ kind: 'runningBetweenStops', value: { atLeastMs: atLeast * MINUTE } },
  })

test('running between planned stops begins after the minimum: kept, just kept, broken', () => {
  // In at 10, out at 11, in again at 30: 19 min.
  const stops = [stop(10), stop(30)]
  expect(verdicts(judge(stops, 18))).toEqual([['kept', 19, 1]])
  expect(verdicts(judge(stops, 19))).toEqual([['kept', 19, 0]])
  expect(verdicts(judge(stops, 20))).toEqual([['broken', 19, -1]])
  expect(sentences(judge(stops, 20))).toEqual([
    'Before the stop at 0:30 of segment 1 the car runs 0:19, at least 0:20.',
  ])
})

test('a stop that was made ends when the car went out, and the race clock goes on over a break', () => {
  // In at 50, out at 54; then in at 4 of the next hour, long after: 60 - 54 + 4 = 10 min of race clock.
  const made = stop(50, { done: true, outAt: GREEN_AT + 54 * MINUTE })
  const next = stop(4, { segment: 'two', at: GREEN_AT + 100 * MINUTE })
  expect(verdicts(judge([made, next], 10))).toEqual([['kept', 10, 0]])
})

test('what is mended in between is no stop of this rule', () => {
  expect(verdicts(judge([stop(10), stop(12, { mandatory: false }), stop(30)], 18))).toEqual([
    ['kept', 19, 1],
  ])
})
