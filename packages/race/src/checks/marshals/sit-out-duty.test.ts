import { expect, test } from 'vitest'
import { found, hour, marshal } from '../testing/judging.ts'

const segments = [hour({ lane: 'sitOut', name: 'Sit-out' })]
const duty = (obliges: 'marshalAllPosts' | 'marshalSomePosts' | 'rest', posts?: number) =>
  ({
    kind: 'sitOutDuty',
    value: { obliges, ...(posts === undefined ? {} : { posts }) },
  }) as const
const spans = [marshal('Ana', 0, 60), marshal('Ben', 0, 60)]

test('posts in a sit-out: kept, just kept, broken', () => {
  const judge = (posts: number) =>
    found({ spans, segments, ...duty('marshalSomePosts', posts) }).map(
      ({ verdict, value, margin }) => [verdict, value, margin],
    )
  expect(judge(1)).toEqual([['kept', 2, 1]])
  expect(judge(2)).toEqual([['kept', 2, 0]])
  expect(judge(3)).toEqual([['broken', 2, -1]])
})

test('all posts are not counted without their number, and nothing is owed while the car runs', () => {
  expect(found({ spans, segments, ...duty('marshalAllPosts') })).toEqual([])
  expect(found({ spans, segments: [hour({ lane: 2 })], ...duty('marshalAllPosts', 6) })).toEqual([])
})

test('a sit-out to rest in: kept by nobody at a post, broken by somebody', () => {
  expect(found({ spans: [], segments, ...duty('rest') })).toMatchObject([
    { verdict: 'kept', value: 0, margin: 0 },
  ])
  expect(found({ spans, segments, ...duty('rest') })).toMatchObject([
    {
      ...{ verdict: 'broken', value: 2, margin: -2, people: ['Ana', 'Ben'] },
      sentence: 'In Sit-out, a sit-out to rest in, 2 people marshal.',
    },
  ])
})
