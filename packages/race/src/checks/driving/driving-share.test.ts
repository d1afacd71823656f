import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, hour } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

// Of 60 min Ana drives 36, 60 %, and Ben 24, 40 %.
const spans = [drive('Ana', 0, 36), drive('Ben', 36, 60)]

test('a share of the race: kept, just kept, broken', () => {
  const judge = (atLeast: number, atMost: number) =>
    verdicts(found({ spans, kind: 'drivingShare', value: { atLeast, atMost } }))
  // 35 % of 60 min are 21, 65 % are 39.
  expect(judge(350, 650)).toEqual([
    ['kept', 24, 3, 'Ben'],
    ['kept', 36, 3, 'Ana'],
  ])
  expect(judge(400, 600)).toEqual([
    ['kept', 24, 0, 'Ben'],
    ['kept', 36, 0, 'Ana'],
  ])
  // 45 % are 27 min, 55 % are 33.
  expect(judge(450, 550)).toEqual([
    ['broken', 24, -3, 'Ben'],
    ['broken', 36, -3, 'Ana'],
  ])
})

test('a second beyond 60 % of 24 h is not rounded away', () => {
  // Motorsport UK National Competition Rules 2026: over 6 h at most 60 % for one driver; 60 % of 24 h are 14:24.
  const whole = [hour({ lengthMs: 1_440 * MINUTE })]
  const judge = (until: number) =>
    found({
      ...{ spans: [drive('Ana', 0, until), drive('Ben', until, 1_440)], segments: whole },
      ...{ kind: 'drivingShare', value: { atMost: 600, longerThanMs: 360 * MINUTE } },
    })
  expect(judge(864)).toMatchObject([{ verdict: 'kept', margin: 0 }])
  expect(judge(864 + 1 / 60)).toMatchObject([{ verdict: 'broken', margin: -1_000 }])
  expect(sentences(judge(865))).toEqual(['Ana drives 14:25, at most 60 % of the race, 14:24.'])
})

test('a share of a millisecond is cut to the safe side', () => {
  const segments = [hour({ lengthMs: 1_001 })]
  const judge = (value: { atLeast?: number; atMost?: number }) =>
    found({ spans: [drive('Ana', 0, 500 / MINUTE)], segments, kind: 'drivingShare', value })
  // 499.5 ‰ cannot be said; 500 ‰ of 1,001 ms are 500.5.
  expect(judge({ atMost: 500 })).toMatchObject([{ limit: 500, verdict: 'kept' }])
  expect(judge({ atLeast: 500 })).toMatchObject([{ limit: 501, verdict: 'broken' }])
})

test('a race no longer than the rule says, or counted in laps, is not judged', () => {
  const value = { atMost: 500, longerThanMs: 60 * MINUTE }
  expect(found({ spans, kind: 'drivingShare', value })).toEqual([])
  const longer = { atMost: 500, longerThanMs: 59 * MINUTE }
  expect(found({ spans, kind: 'drivingShare', value: longer })).toHaveLength(1)
  const laps = [hour(), { ...hour({ id: 'two', index: 1 }), lengthMs: undefined }]
  expect(found({ spans, segments: laps, kind: 'drivingShare', value: { atMost: 1 } })).toEqual([])
})
