import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, marshal, stop } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (by: By) => found(by).filter(({ id }) => id === 'somebodyDrives:gap')

test('somebody drives from green to the end', () => {
  expect(judge({ spans: [drive('Ana', 0, 30), drive('Ben', 30, 60)] })).toEqual([])
  const gaps = judge({ spans: [drive('Ana', 5, 30), drive('Ben', 31, 60)] })
  expect(verdicts(gaps)).toEqual([
    ['broken', 5, -5],
    ['broken', 1, -1],
  ])
  expect(sentences(gaps)).toEqual([
    'Nobody drives from 0:00 to 0:05 of segment 1.',
    'Nobody drives from 0:30 to 0:31 of segment 1.',
  ])
})

test('a segment without any duty has no driver either, a sit-out needs none', () => {
  const spans = [drive('Ana', 0, 60)]
  const two = (lane?: 'sitOut') => [hour(), hour({ id: 'two', index: 1, lane })]
  expect(sentences(judge({ spans, segments: two() }))).toEqual([
    'Nobody drives from 0:00 to 1:00 of segment 2.',
  ])
  expect(judge({ spans, segments: two('sitOut') })).toEqual([])
})

test('a race is judged as far as it came', () => {
  const spans = [drive('Ana', 0, 20), marshal('Ben', 0, 25)]
  const segments = [hour(), hour({ id: 'two', index: 1 })]
  expect(sentences(judge({ spans, segments, isWhole: false }))).toEqual([
    'Nobody drives from 0:20 to 0:25 of segment 1.',
  ])
  const cutShort = [hour({ over: true })]
  const raced = [{ ...drive('Ana', 0, 50), done: true }]
  expect(judge({ spans: raced, segments: cutShort })).toEqual([])
})

test('during a stop nobody needs to drive', () => {
  const spans = [drive('Ana', 0, 20), drive('Ben', 23, 60)]
  const lasting = (minutes: number) => [stop(20, { outAt: GREEN_AT + (20 + minutes) * MINUTE })]
  expect(judge({ spans, stops: lasting(3) })).toEqual([])
  expect(verdicts(judge({ spans, stops: lasting(2) }))).toEqual([['broken', 1, -1]])
})

test('it goes by the race clock: a call makes no gap', () => {
  const spans = [
    { ...drive('Ana', 0, 30), toAt: GREEN_AT + 40 * MINUTE },
    { ...drive('Ben', 30, 60), fromAt: GREEN_AT + 40 * MINUTE, toAt: GREEN_AT + 70 * MINUTE },
  ]
  expect(judge({ spans })).toEqual([])
})
