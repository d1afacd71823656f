import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 60)]
const rule = (times: number, segments?: readonly string[]) =>
  ({
    kind: 'stopTask',
    value: { task: 'Motor change', times, ...(segments ? { segments: [...segments] } : {}) },
  }) as const

test('task: kept, just kept, broken, whatever its capitals', () => {
  const stops = [
    stop(10, { tasks: ['Tyres', 'motor change'] }),
    stop(20, { tasks: ['Motor change', 'MOTOR CHANGE'], mandatory: false }),
    stop(30, { tasks: ['Tyres'] }),
  ]
  const judge = (times: number) =>
    found({ spans, stops, ...rule(times) }).map(({ verdict, value, margin }) => [
      verdict,
      value,
      margin,
    ])
  expect(judge(1)).toEqual([['kept', 2, 1]])
  expect(judge(2)).toEqual([['kept', 2, 0]])
  expect(judge(3)).toEqual([['broken', 2, -1]])
})

test('in one of the segments named', () => {
  const segments = [
    hour(),
    hour({ id: 'two', index: 1, startsAt: GREEN_AT + 60 * MINUTE }),
    hour({ id: 'three', index: 2, startsAt: GREEN_AT + 120 * MINUTE }),
  ]
  const inSegment = (segment: string) =>
    found({
      ...{ spans, segments, stops: [stop(10, { segment, tasks: ['Motor change'] })] },
      ...rule(1, ['two', 'three']),
    })
  expect(inSegment('three')).toMatchObject([{ verdict: 'kept', value: 1 }])
  expect(inSegment('one')).toMatchObject([
    {
      ...{ verdict: 'broken', value: 0 },
      sentence: 'Motor change: 0 times in segment 2 or segment 3, at least 1.',
    },
  ])
})

test('while segments are not known yet nothing is judged', () => {
  const value = { task: 'Motor change', times: 1, segments: 'notKnownYet' } as const
  expect(found({ spans, kind: 'stopTask', value })).toEqual([])
})
