import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, marshal, span } from '../testing/judging.ts'

const at = (person: string, from: number, to: number) =>
  span({ person, duty: 'post', post: '4' }, from, to)
const rule = (byMinutes?: number) =>
  ({
    kind: 'relief',
    value: {
      before: true,
      ...(byMinutes === undefined ? {} : { byMs: byMinutes * MINUTE }),
    },
  }) as const
const judge = (spans: Parameters<typeof found>[0]['spans'], byMinutes?: number) =>
  found({ spans, ...rule(byMinutes) }).map(({ verdict, value, margin }) => [
    verdict,
    value / MINUTE,
    margin / MINUTE,
  ])

test('relief: kept, just kept, broken', () => {
  // Ben comes at 25, Ana leaves at 30.
  const spans = [at('Ana', 0, 30), at('Ben', 25, 60)]
  expect(judge(spans)).toEqual([['kept', 5, 5]])
  expect(judge(spans, 5)).toEqual([['kept', 5, 0]])
  expect(judge(spans, 6)).toEqual([['broken', 5, -1]])
})

test('a gap at one post is not covered by another', () => {
  const spans = [
    at('Ana', 0, 30),
    at('Ben', 31, 60),
    span({ person: 'Cem', duty: 'post', post: '5' }, 0, 60),
  ]
  expect(found({ spans, ...rule() })).toMatchObject([
    {
      ...{ verdict: 'broken', value: -MINUTE, people: ['Ana', 'Ben'] },
      sentence: 'Ana leaves post 4 at 0:30 of segment 1, Ben comes 0:01 later.',
    },
  ])
})

test('a post that nobody comes to is open to the end of the segment', () => {
  expect(found({ spans: [at('Ana', 0, 30)], ...rule() })).toMatchObject([
    {
      ...{ verdict: 'broken', value: -30 * MINUTE, people: ['Ana'] },
      sentence: 'Ana leaves post 4 at 0:30 of segment 1, and nobody comes after.',
    },
  ])
})

test('posts without a name are relieved one for one', () => {
  const two = [marshal('Ana', 0, 30), marshal('Ben', 0, 30), marshal('Cem', 30, 60)]
  expect(judge([...two, marshal('Dov', 30, 60)])).toEqual([['kept', 0, 0]])
  expect(judge([...two, marshal('Dov', 32, 60)])).toEqual([['broken', -2, -2]])
})

test('whoever is at the post while the race goes on has not left it', () => {
  const spans = [drive('Cem', 0, 30), at('Ana', 0, 20), at('Ben', 20, 30)]
  expect(found({ spans, isWhole: false, ...rule() })).toMatchObject([
    { verdict: 'kept', value: 0, people: ['Ana', 'Ben'] },
  ])
})
