import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, marshal } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
interface Value {
  atLeastMs?: number
  shareOfStint?: number
  marshalling?: 'isRest' | 'isNotRest' | 'notKnownYet'
}
const judge = (by: By, { marshalling = 'isRest', ...value }: Value) =>
  found({ ...by, kind: 'driverRest', value: { marshalling, ...value } })

// Ana drives 20 min, rests 15, drives 25.
const spans = [drive('Ana', 0, 20), drive('Ben', 20, 35), drive('Ana', 35, 60)]

test('rest: kept, just kept, broken', () => {
  const least = (minutes: number) => judge({ spans }, { atLeastMs: minutes * MINUTE })
  expect(verdicts(least(14))).toEqual([['kept', 15, 1, 'Ana']])
  expect(verdicts(least(15))).toEqual([['kept', 15, 0, 'Ana']])
  expect(verdicts(least(16))).toEqual([['broken', 15, -1, 'Ana']])
  expect(sentences(least(16))).toEqual([
    'Ana rests 0:15 before the stint at 0:35 of segment 1, at least 0:16.',
  ])
})

test('a share of the stint before: 75 % of 20 min are 15', () => {
  const share = (perMille: number) => judge({ spans }, { shareOfStint: perMille })
  expect(verdicts(share(700))).toEqual([['kept', 15, 1, 'Ana']])
  expect(verdicts(share(750))).toEqual([['kept', 15, 0, 'Ana']])
  expect(verdicts(share(800))).toEqual([['broken', 15, -1, 'Ana']])
  expect(sentences(share(800))).toEqual([
    'Ana rests 0:15 before the stint at 0:35 of segment 1, at least 80 % of the stint before, 0:16.',
  ])
})

test('of a stint only what was driven asks for rest', () => {
  // Ten of the 20 min were held: 80 % of 10 are 8.
  expect(verdicts(judge({ spans, notDriving: [[5, 15]] }, { shareOfStint: 800 }))).toEqual([
    ['kept', 15, 7, 'Ana'],
  ])
})

test('with a post in between the longest stretch without one counts, where marshalling is no rest', () => {
  // 20–35 with a post from 24 to 29: 4 and 6 min are left.
  const posted = [...spans, marshal('Ana', 24, 29)]
  const rule = { atLeastMs: 6 * MINUTE }
  expect(verdicts(judge({ spans: posted }, { ...rule, marshalling: 'isRest' }))).toEqual([
    ['kept', 15, 9, 'Ana'],
  ])
  expect(verdicts(judge({ spans: posted }, { ...rule, marshalling: 'isNotRest' }))).toEqual([
    ['kept', 6, 0, 'Ana'],
  ])
  expect(sentences(judge({ spans: posted }, { ...rule, marshalling: 'notKnownYet' }))).toEqual([
    'Ana rests 0:06 before the stint at 0:35 of segment 1, at least 0:06, assuming marshalling is not rest.',
  ])
})

test('rest goes by meeting time: a call that stops the race clock is rest for who does not drive', () => {
  // Ben’s 15 min of race clock take 20.
  const late = [
    drive('Ana', 0, 20),
    { ...drive('Ben', 20, 35), toAt: GREEN_AT + 40 * MINUTE },
    { ...drive('Ana', 35, 60), fromAt: GREEN_AT + 40 * MINUTE, toAt: GREEN_AT + 65 * MINUTE },
  ]
  expect(verdicts(judge({ spans: late }, { atLeastMs: 20 * MINUTE }))).toEqual([
    ['kept', 20, 0, 'Ana'],
  ])
})
