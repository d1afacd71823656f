import { expect, test } from 'vitest'
import { drive, found, hour, span, stop, type ByHand } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const oneself = { id: 'oneself', kind: 'changeWithOneself', value: { begins: true } } as const
const minimum = {
  id: 'minimum',
  kind: 'stopMinimum',
  value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
} as const
const paces = { Ana: 20_000, Ben: 30_000, Cara: 30_000 }
// Ben has the car for two minutes between two changes: 120 s ÷ 30 s = 4 laps.
const spans = [drive('Ana', 0, 20), drive('Ben', 20, 22), drive('Cara', 22, 60)]

const judge = (atLeast: number, byHand: Partial<ByHand> = {}) =>
  found({ spans, paces, ...byHand, kind: 'lapsBetweenChanges', value: { atLeast } })

test('laps between two changes: kept, just kept, broken', () => {
  expect(verdicts(judge(3))).toEqual([['kept', 4, 1, 'Ben']])
  expect(verdicts(judge(4))).toEqual([['kept', 4, 0, 'Ben']])
  expect(verdicts(judge(5))).toEqual([['broken', 4, -1, 'Ben']])
  // 5 × 30 s = 2:30.
  expect(sentences(judge(5))).toEqual([
    'Between two changes Ben runs 0:02 from 0:20 of segment 1, about 4 laps; at least 5 laps, about 0:02:30: an estimate from the pace entered.',
  ])
})

test('time in a stop is no running, and what is left of a lap is no lap', () => {
  // Of two minutes one is a stop, planned with its minimum: 60 s ÷ 40 s is one lap and a half.
  const planned = { stops: [stop(20)], also: [minimum], paces: { ...paces, Ben: 40_000 } }
  expect(verdicts(judge(1, planned))).toEqual([['kept', 1, 0, 'Ben']])
  // Both changes in one stop of two minutes.
  const made = stop(20, { done: true, outAt: stop(22).at })
  expect(sentences(judge(1, { stops: [made] }))).toEqual([
    'Between two changes Ben runs 0:00 from 0:20 of segment 1, less than one lap; at least one lap, about 0:00:30: an estimate from the pace entered.',
  ])
})

test('a driver without a pace is not judged', () => {
  expect(judge(5, { paces: { Ana: 20_000 } })).toEqual([])
})

test('before the first change and after the last nothing is owed', () => {
  expect(judge(500, { spans: [drive('Ana', 0, 1), drive('Ben', 1, 60)] })).toEqual([])
})

test('a change with oneself counts where it begins a stint', () => {
  const alone = [drive('Ana', 0, 20), drive('Ana', 20, 21), drive('Ana', 21, 60)]
  expect(judge(1, { spans: alone })).toEqual([])
  // 60 s ÷ 20 s = 3 laps.
  expect(verdicts(judge(1, { spans: alone, also: [oneself] }))).toEqual([['kept', 3, 2, 'Ana']])
})

test('whoever drives on after a break has not changed', () => {
  const segments = [hour(), hour({ id: 'two', index: 1, after: 'break' })]
  const after = { segment: 'two', duty: 'controller', startsAfter: 90 } as const
  const over = [
    ...[drive('Ana', 0, 59), drive('Ben', 59, 60)],
    ...[span({ person: 'Ben', ...after }, 0, 1), span({ person: 'Cara', ...after }, 1, 60)],
  ]
  // A minute before the break and one after it: 120 s ÷ 30 s = 4 laps.
  expect(verdicts(judge(4, { spans: over, segments }))).toEqual([['kept', 4, 0, 'Ben']])
})
