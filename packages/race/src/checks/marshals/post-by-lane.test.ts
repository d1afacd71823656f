import { expect, test } from 'vitest'
import { found, hour, span } from '../testing/judging.ts'

const at = (post: string | undefined, person = 'Ana') =>
  span({ person, duty: 'post', ...(post === undefined ? {} : { post }) }, 0, 60)
const rule = { kind: 'postByLane', value: { tied: true } } as const
const segments = [hour({ lane: 4 })]

test('post and lane: kept by the same number, broken by another', () => {
  expect(found({ spans: [at('4')], segments, ...rule })).toMatchObject([
    { verdict: 'kept', value: 0, margin: 0 },
  ])
  expect(found({ spans: [at('4'), at('3', 'Ben')], segments, ...rule })).toMatchObject([
    {
      ...{ verdict: 'broken', value: 1, margin: -1, people: ['Ben'] },
      sentence: 'Ben is at post 3 from 0:00 of segment 1, which runs on lane 4.',
    },
  ])
})

test('a post without a name and a lane not drawn yet cannot be compared', () => {
  expect(found({ spans: [at(undefined)], segments, ...rule })).toEqual([])
  expect(found({ spans: [at('3')], segments: [hour({ lane: 'notDrawnYet' })], ...rule })).toEqual(
    [],
  )
})
