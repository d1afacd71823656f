import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { found, GREEN_AT, hour, marshal, span } from '../testing/judging.ts'

const judge = (
  spans: Parameters<typeof found>[0]['spans'],
  value: { readonly atMostMs?: number; readonly restMs?: number },
) =>
  found({ spans, kind: 'marshalShift', value }).map((one) => [
    one.verdict,
    one.value / MINUTE,
    one.margin / MINUTE,
  ])

test('a shift: kept, just kept, broken', () => {
  // Two spans without a gap are one shift of 30 min.
  const spans = [marshal('Ana', 0, 10), marshal('Ana', 10, 30)]
  expect(judge(spans, { atMostMs: 40 * MINUTE })).toEqual([['kept', 30, 10]])
  expect(judge(spans, { atMostMs: 30 * MINUTE })).toEqual([['kept', 30, 0]])
  expect(judge(spans, { atMostMs: 29 * MINUTE })).toEqual([['broken', 30, -1]])
})

test('rest between two shifts: kept, just kept, broken', () => {
  const spans = [marshal('Ana', 0, 10), marshal('Ana', 30, 50)]
  expect(judge(spans, { restMs: 15 * MINUTE })).toEqual([['kept', 20, 5]])
  expect(judge(spans, { restMs: 20 * MINUTE })).toEqual([['kept', 20, 0]])
  expect(judge(spans, { restMs: 21 * MINUTE })).toEqual([['broken', 20, -1]])
})

test('a shift goes on over a lane change, and ends at a break', () => {
  const spans = [
    marshal('Ana', 0, 60),
    span({ person: 'Ana', duty: 'post', segment: 'two', startsAfter: 65 }, 0, 60),
  ]
  const minutes = (after: 'laneChange' | 'break') =>
    found({
      spans,
      segments: [hour(), hour({ id: 'two', index: 1, startsAt: GREEN_AT + 65 * MINUTE, after })],
      kind: 'marshalShift',
      value: { atMostMs: 120 * MINUTE },
    }).map(({ verdict, value }) => [verdict, value / MINUTE])
  // 60 + 5 + 60 = 125 min at the post; with a break twice 60.
  expect(minutes('laneChange')).toEqual([['broken', 125]])
  expect(minutes('break')).toEqual([['kept', 60]])
})

test('sentences', () => {
  const spans = [marshal('Ana', 0, 10), marshal('Ana', 30, 50)]
  expect(
    found({
      spans,
      kind: 'marshalShift',
      value: { atMostMs: 15 * MINUTE, restMs: 30 * MINUTE },
    }).map(({ sentence }) => sentence),
  ).toEqual([
    'Ana marshals 0:20 without a break, at most 0:15.',
    'Ana has 0:20 between two shifts, at least 0:30.',
  ])
})
