import { expect, test } from 'vitest'
import type { RuleValue } from '../../rules/index.ts'
import { MINUTE } from '../../testing/small-meeting.ts'
import { benchOf } from '../bench.ts'
import {
  crewOf,
  drive,
  found,
  GREEN_AT,
  hour,
  marshal,
  regulationsOf,
  span,
  timelineOf,
} from '../testing/judging.ts'
import { restBlock } from './rest-block.ts'

const NOT_REST = { marshalling: 'isNotRest' } as const
/** Two hours with a break of 30 min between them. */
const segments = [
  hour(),
  hour({ id: 'two', index: 1, startsAt: GREEN_AT + 90 * MINUTE, after: 'break' }),
]
const late = (from: number, to: number) =>
  span({ person: 'Ana', duty: 'controller', segment: 'two', startsAfter: 90 }, from, to)
const judge = (spans: Parameters<typeof found>[0]['spans'], value: RuleValue<'restBlock'>) =>
  found({ spans, segments, kind: 'restBlock', value }).map((one) => [
    ...[one.verdict, one.value / MINUTE, one.margin / MINUTE, ...one.people],
  ])

test('one long rest: kept, just kept, broken', () => {
  // From 20 to 90 + 10, breaks included: 80 min.
  const spans = [drive('Ana', 0, 20), late(10, 60)]
  const at = (least: number) => judge(spans, { atLeastMs: least * MINUTE, ...NOT_REST })
  expect(at(70)).toEqual([['kept', 80, 10, 'Ana']])
  expect(at(80)).toEqual([['kept', 80, 0, 'Ana']])
  expect(at(81)).toEqual([['broken', 80, -1, 'Ana']])
})

test('a post breaks it unless marshalling is rest, wall and bench always, off duty never', () => {
  const value = (marshalling: 'isRest' | 'isNotRest' | 'notKnownYet') => {
    return { atLeastMs: 80 * MINUTE, marshalling }
  }
  const both = (spans: Parameters<typeof judge>[0]) =>
    (['isRest', 'isNotRest', 'notKnownYet'] as const).map((one) => judge(spans, value(one))[0]?.[1])
  const ends = [drive('Ana', 0, 20), late(10, 60)]
  // 20 to 50, 60 to 100; otherwise 20 to 100.
  expect(both([...ends, marshal('Ana', 50, 60)])).toEqual([80, 40, 40])
  const at = (duty: 'wall' | 'offDuty') => span({ person: 'Ana', duty }, 50, 60)
  expect(both([...ends, at('wall')])).toEqual([40, 40, 40])
  expect(both([...ends, at('offDuty')])).toEqual([80, 80, 80])
})

test('time off is no duty: whoever has nothing else is not asked to rest', () => {
  const off = span({ person: 'Ben', duty: 'offDuty' }, 0, 60)
  // Longer than the race: nobody could.
  const value = { atLeastMs: 160 * MINUTE, ...NOT_REST }
  expect(judge([off], value)).toEqual([])
  // At a post to 10, off from there to 150.
  const post = marshal('Ben', 0, 10)
  expect(judge([off, post], value)).toEqual([['broken', 140, -20, 'Ben']])
})

test('hours of the clock: only rest within them counts, and nothing before midnight is known', () => {
  const value = { atLeastMs: 30 * MINUTE, from: 30 * MINUTE, to: 60 * MINUTE, ...NOT_REST }
  const spans = [drive('Ana', 0, 40)]
  const rests = (midnightAt: number | undefined) => {
    const regulations = { ...regulationsOf([]), midnightAt }
    const judged = {
      regulations,
      crew: crewOf({ spans }),
      timeline: timelineOf({ spans, segments }),
    }
    return restBlock
      .limits(value, benchOf(judged))
      .flatMap(({ cases }) => cases.map((one) => one.value / MINUTE))
  }
  // Green is at midnight: from 0:30 to 1:00 Ana drives until 0:40.
  expect(rests(GREEN_AT)).toEqual([20])
  expect(rests(undefined)).toEqual([])
})

test('only of the category, only who has a duty, open while the race runs', () => {
  const judged = (isWhole: boolean) =>
    found({
      ...{ spans: [drive('Ana', 0, 60)], crew: ['Ana', 'Ben'], isWhole },
      ...{ categories: { Ana: ['novice'] }, kind: 'restBlock' as const },
      value: { who: 'Novice', atLeastMs: 10 * MINUTE, ...NOT_REST },
    }).map(({ verdict, people, sentence }) => [verdict, ...people, sentence])
  const says = 'Ana’s longest rest is 0:00, at least 0:10.'
  expect(judged(true)).toEqual([['broken', 'Ana', says]])
  expect(judged(false)).toEqual([['open', 'Ana', says]])
})

test('what is assumed is said', () => {
  const [one] = found({
    ...{ spans: [marshal('Ana', 0, 60)], kind: 'restBlock' as const },
    value: { atLeastMs: 10 * MINUTE, marshalling: 'notKnownYet' },
  })
  expect(one?.sentence).toBe(
    'Ana’s longest rest is 0:00, at least 0:10, assuming marshalling is not rest.',
  )
})
