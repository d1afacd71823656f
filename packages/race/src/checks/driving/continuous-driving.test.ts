import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

test('the length of a stint: kept, just kept, broken', () => {
  // Ana drives 0–20 and 20–25 without a break: one stint of 25 min; Ben 35.
  const spans = [drive('Ana', 0, 20), drive('Ana', 20, 25), drive('Ben', 25, 60)]
  const judge = (atLeast: number, atMost: number) =>
    found({
      ...{ spans, kind: 'continuousDriving' },
      value: { atLeastMs: atLeast * MINUTE, atMostMs: atMost * MINUTE },
    })
  expect(verdicts(judge(20, 40))).toEqual([
    ['kept', 25, 5, 'Ana'],
    ['kept', 35, 5, 'Ben'],
  ])
  expect(verdicts(judge(25, 35))).toEqual([
    ['kept', 25, 0, 'Ana'],
    ['kept', 35, 0, 'Ben'],
  ])
  expect(sentences(judge(26, 34))).toEqual([
    'Ana’s stint from 0:00 of segment 1 lasts 0:25, at least 0:26.',
    'Ben’s stint from 0:25 of segment 1 lasts 0:35, at most 0:34.',
  ])
})

test('a stint that its segment cut short is judged, and says so', () => {
  const spans = [drive('Ana', 0, 50), drive('Ben', 50, 60)]
  expect(
    sentences(found({ spans, kind: 'continuousDriving', value: { atLeastMs: 30 * MINUTE } })),
  ).toEqual(['Ben’s stint from 0:50 of segment 1 lasts 0:10, at least 0:30; its segment ended.'])
})

test('under a track call the race clock holds for, driving counts unless it is held too', () => {
  // Ana drives 0–30 of the race clock; ten minutes of call from minute 20: until minute 40 of meeting time.
  const stretched = { ...drive('Ana', 0, 30), toAt: GREEN_AT + 40 * MINUTE }
  const value = { atMostMs: 35 * MINUTE }
  const runs = found({ spans: [stretched], kind: 'continuousDriving', value })
  expect(verdicts(runs)).toEqual([['broken', 40, -5, 'Ana']])
  const held = found({
    ...{ spans: [stretched], notDriving: [[20, 30]], kind: 'continuousDriving', value },
  })
  expect(verdicts(held)).toEqual([['kept', 30, 5, 'Ana']])
})

test('a stint that still goes on may yet be long enough, one that is over may not', () => {
  const spans = [drive('Ana', 0, 10), drive('Ben', 10, 20)]
  const value = { atLeastMs: 15 * MINUTE }
  expect(verdicts(found({ spans, isWhole: false, kind: 'continuousDriving', value }))).toEqual([
    ['broken', 10, -5, 'Ana'],
    ['open', 10, -5, 'Ben'],
  ])
})

test('a stint goes on over a lane change, and a change with oneself begins one only where it is said', () => {
  const segments = [hour(), hour({ id: 'two', index: 1, after: 'laneChange' })]
  const over = span({ person: 'Ana', duty: 'controller', segment: 'two', startsAfter: 65 }, 0, 20)
  const spans = [drive('Ana', 30, 45), drive('Ana', 45, 60), over]
  const judge = (begins: boolean) =>
    verdicts(
      found({
        ...{ spans, segments, kind: 'continuousDriving', value: { atMostMs: 60 * MINUTE } },
        also: [{ id: 'oneself', kind: 'changeWithOneself', value: { begins } }],
      }),
    )
  // 15 + 15 + 20 = 50 min; the second of two alone 15 + 20 = 35.
  expect(judge(false)).toEqual([['kept', 50, 10, 'Ana']])
  expect(judge(true)).toEqual([['kept', 35, 25, 'Ana']])
})

test('the race going over into its plan is no change with oneself', () => {
  const spans = [{ ...drive('Ana', 0, 20), done: true }, drive('Ana', 20, 40)]
  const also = [{ id: 'oneself', kind: 'changeWithOneself', value: { begins: true } } as const]
  const value = { atMostMs: 30 * MINUTE }
  expect(verdicts(found({ spans, also, kind: 'continuousDriving', value }))).toEqual([
    ['broken', 40, -10, 'Ana'],
  ])
})
