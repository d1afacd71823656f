import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour, marshal, span } from '../testing/judging.ts'

const owed = (count: number, when: 'wholeRace' | 'sitOuts' = 'wholeRace') =>
  ({ kind: 'marshalsOwed', value: { count, when } }) as const
const twoHours = [
  hour(),
  hour({ id: 'two', index: 1, startsAt: GREEN_AT + 60 * MINUTE, lane: 'sitOut' }),
]

test('marshals owed: kept, just kept, broken', () => {
  const spans = [marshal('Ana', 0, 60), marshal('Ben', 0, 60)]
  const judge = (count: number) =>
    found({ spans, ...owed(count) }).map(({ verdict, value, margin }) => [verdict, value, margin])
  expect(judge(1)).toEqual([['kept', 2, 1]])
  expect(judge(2)).toEqual([['kept', 2, 0]])
  expect(judge(3)).toEqual([['broken', 2, -1]])
})

test('a gap is found to the millisecond and said', () => {
  const spans = [
    marshal('Ana', 0, 20),
    { ...marshal('Ben', 20, 60), fromMs: 20 * MINUTE + 1, fromAt: GREEN_AT + 20 * MINUTE + 1 },
  ]
  expect(found({ spans, ...owed(1) })).toMatchObject([{ verdict: 'broken', value: 0, people: [] }])
  expect(
    found({ spans: [marshal('Ana', 0, 20), marshal('Ben', 25, 60)], ...owed(1) }),
  ).toMatchObject([
    {
      verdict: 'broken',
      sentence: 'At posts from 0:20 to 0:25 of segment 1: no people, at least 1.',
    },
  ])
})

test('somebody at two posts counts once', () => {
  const at = (post: string) => span({ person: 'Ana', duty: 'post', post }, 0, 60)
  expect(found({ spans: [at('3'), at('4')], ...owed(2) })).toMatchObject([
    { verdict: 'broken', value: 1 },
  ])
})

test('what is owed in sit-outs is not owed while the car runs', () => {
  const inTwo = span({ person: 'Ana', duty: 'post', segment: 'two', startsAfter: 60 }, 0, 60)
  const spans = [drive('Ana', 0, 60), inTwo]
  const judge = (when: 'wholeRace' | 'sitOuts') =>
    found({ spans, segments: twoHours, ...owed(1, when) }).map(({ verdict, value }) => [
      verdict,
      value,
    ])
  expect(judge('sitOuts')).toEqual([['kept', 1]])
  expect(judge('wholeRace')).toEqual([['broken', 0]])
})

test('a race is judged as far as it has come', () => {
  // Ten minutes in: Ana was there all the time, the next fifty are still to come.
  const spans = [drive('Ben', 0, 10), marshal('Ana', 0, 10)]
  expect(found({ spans, isWhole: false, ...owed(1) })).toMatchObject([
    { verdict: 'kept', value: 1 },
  ])
})

test('a post left during a track call is a gap, although the race clock stands', () => {
  // At 0:20 power is off for five minutes; Ana leaves at once, Ben comes when it is on again.
  const ana = marshal('Ana', 0, 20)
  const ben = { ...marshal('Ben', 20, 60), fromAt: ana.toAt + 5 * MINUTE }
  const segment = hour({ endsAt: GREEN_AT + 65 * MINUTE })
  const spans = [ana, { ...ben, toAt: GREEN_AT + 65 * MINUTE }]
  expect(found({ spans, segments: [segment], ...owed(1) })).toMatchObject([
    { verdict: 'broken', value: 0 },
  ])
})
