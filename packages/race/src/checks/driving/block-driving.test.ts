import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (by: By, value: { blockMs: number; atLeastMs?: number; atMostMs?: number }) =>
  found({ ...by, kind: 'blockDriving', value })
const blockMs = 20 * MINUTE

test('driving in fixed blocks: kept, just kept, broken', () => {
  // Blocks 0–20, 20–40, 40–60. Ana 0–12 and 20–28 and 40–50; Ben 8, 12 and 10 min of them.
  const spans = [
    ...[drive('Ana', 0, 12), drive('Ben', 12, 20), drive('Ana', 20, 28)],
    ...[drive('Ben', 28, 40), drive('Ana', 40, 50), drive('Ben', 50, 60)],
  ]
  const limits = (atLeast: number, atMost: number) =>
    judge({ spans }, { blockMs, atLeastMs: atLeast * MINUTE, atMostMs: atMost * MINUTE })
  expect(verdicts(limits(7, 13))).toEqual([
    ['kept', 8, 1, 'Ana'],
    ['kept', 12, 1, 'Ana'],
  ])
  expect(verdicts(limits(8, 12))).toEqual([
    ['kept', 8, 0, 'Ana'],
    ['kept', 12, 0, 'Ana'],
  ])
  expect(sentences(limits(9, 11))).toEqual([
    'Ana drives 0:08 from 0:20 to 0:40 of the race, at least 0:09.',
    'Ben drives 0:08 from 0:00 to 0:20 of the race, at least 0:09.',
    'Ana drives 0:12 from 0:00 to 0:20 of the race, at most 0:11.',
    'Ben drives 0:12 from 0:20 to 0:40 of the race, at most 0:11.',
  ])
})

test('a stint over the edge of a block is cut there', () => {
  // 15–35 lies 5 min in the first block and 15 in the second.
  const spans = [drive('Ana', 15, 35)]
  expect(verdicts(judge({ spans }, { blockMs, atMostMs: 14 * MINUTE }))).toEqual([
    ['broken', 15, -1, 'Ana'],
  ])
})

test('blocks go on over segments, and the last shorter one is judged for too much only', () => {
  // Two segments of 30 min, blocks of 40: 0–40 reaches 10 min into the second; 40–60 is shorter.
  const segments = [
    hour({ lengthMs: 30 * MINUTE }),
    hour({ id: 'two', index: 1, lengthMs: 30 * MINUTE, startsAt: GREEN_AT + 90 * MINUTE }),
  ]
  const spans = [
    drive('Ana', 0, 30),
    span({ person: 'Ana', duty: 'controller', segment: 'two', startsAfter: 90 }, 0, 30),
  ]
  const longer = { blockMs: 40 * MINUTE }
  expect(verdicts(judge({ spans, segments }, { ...longer, atMostMs: 19 * MINUTE }))).toEqual([
    ['broken', 40, -21, 'Ana'],
    ['broken', 20, -1, 'Ana'],
  ])
  expect(verdicts(judge({ spans, segments }, { ...longer, atLeastMs: 40 * MINUTE }))).toEqual([
    ['kept', 40, 0, 'Ana'],
  ])
})

test('a track call under which the race clock holds moves no driving into another block', () => {
  // Race clock 0–30, ten minutes of call from minute 5: until minute 40 of meeting time.
  const spans = [{ ...drive('Ana', 0, 30), toAt: GREEN_AT + 40 * MINUTE }]
  const most = { blockMs, atMostMs: 5 * MINUTE }
  // Driving holds too: 20 min in the first block, 10 in the second.
  expect(verdicts(judge({ spans, notDriving: [[5, 15]] }, most))).toEqual([
    ['broken', 20, -15, 'Ana'],
    ['broken', 10, -5, 'Ana'],
  ])
  // It runs on: the ten minutes count where the span ended.
  expect(verdicts(judge({ spans }, most))).toEqual([
    ['broken', 20, -15, 'Ana'],
    ['broken', 20, -15, 'Ana'],
  ])
})

test('while the race goes on, only blocks that are through can be too little', () => {
  const spans = [drive('Ana', 0, 10), drive('Ben', 10, 30)]
  const value = { blockMs, atLeastMs: 11 * MINUTE }
  expect(verdicts(judge({ spans, isWhole: false }, value))).toEqual([
    ['broken', 10, -1, 'Ana'],
    ['open', 0, -11, 'Ana'],
    ['broken', 10, -1, 'Ben'],
    ['open', 10, -1, 'Ben'],
  ])
})
