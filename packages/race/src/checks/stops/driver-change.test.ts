import { expect, test } from 'vitest'
import { MINUTE, SECOND } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, span, stop } from '../testing/judging.ts'

const rule = {
  kind: 'driverChange',
  value: { where: 'stoppedInPitLane', order: 'anyOrder' },
} as const
const minimum = {
  id: 'minimum',
  kind: 'stopMinimum',
  value: { minimumMs: 60 * SECOND, from: 'stopped', to: 'leaving' },
} as const
const spans = [drive('Ana', 0, 20), drive('Ben', 20, 60)]

test('a change at a planned stop: kept inside, just kept, broken', () => {
  // The stop lasts its minimum of a minute: from 19:00 to 20:00, from 18:59 to 19:59, from 20:01.
  const judge = (minute: number) =>
    found({ spans, stops: [stop(minute)], also: [minimum], ...rule }).map(
      ({ verdict, value, margin }) => [verdict, value / SECOND, margin / SECOND],
    )
  expect(judge(20)).toEqual([['kept', 0, 0]])
  expect(judge(19)).toEqual([['kept', 0, 0]])
  expect(judge(18 + 59 / 60)).toEqual([['broken', 1, -1]])
  expect(judge(20 + 1 / 60)).toEqual([['broken', 1, -1]])
})

test('a stop that was made lasts until the car went out, or lasts still', () => {
  const out = { done: true, outAt: GREEN_AT + 19 * MINUTE }
  expect(found({ spans, stops: [stop(18, out)], ...rule })).toMatchObject([
    {
      ...{ verdict: 'broken', value: MINUTE },
      sentence: 'Ana hands over to Ben at 0:20 of segment 1, 0:01 away from the nearest stop.',
    },
  ])
  expect(found({ spans, stops: [stop(18, { done: true })], ...rule })).toMatchObject([
    { verdict: 'kept', value: 0 },
  ])
})

test('without any stop the change is broken; between segments, and with oneself, there is none', () => {
  expect(found({ spans, ...rule })).toMatchObject([
    {
      verdict: 'broken',
      people: ['Ana', 'Ben'],
      sentence: 'Ana hands over to Ben at 0:20 of segment 1, which has no stop.',
    },
  ])
  const segments = [hour(), hour({ id: 'two', index: 1, startsAt: GREEN_AT + 65 * MINUTE })]
  const ben = span({ person: 'Ben', duty: 'controller', segment: 'two', startsAfter: 65 }, 0, 60)
  expect(
    found({ spans: [drive('Ana', 0, 30), drive('Ana', 30, 60), ben], segments, ...rule }),
  ).toEqual([])
})

test('anywhere is anywhere', () => {
  const value = { where: 'anywhere', order: 'downFirst' } as const
  expect(found({ spans, kind: 'driverChange', value })).toEqual([])
})
