import { expect, test } from 'vitest'
import { drive, found, hour, marshal, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (by: By) => found(by).filter(({ id }) => id === 'oneDuty:atOnce')

test('nobody has two duties at once: after one another, touching, overlapping', () => {
  const both = (from: number) => judge({ spans: [drive('Ana', 0, 20), marshal('Ana', from, 60)] })
  expect(both(21)).toEqual([])
  expect(both(20)).toEqual([])
  // 19 to 20: a minute.
  expect(verdicts(both(19))).toEqual([['broken', 1, -1, 'Ana']])
  expect(sentences(both(19))).toEqual([
    'Ana drives and is at a post at once, from 0:19 to 0:20 of segment 1.',
  ])
})

test('the same duty written twice is one, two posts are two', () => {
  expect(judge({ spans: [drive('Ana', 0, 20), drive('Ana', 10, 30)] })).toEqual([])
  const at = (post: string, from: number) =>
    span({ person: 'Ana', duty: 'post', post }, from, from + 20)
  expect(judge({ spans: [at('4', 0), at('4', 10)] })).toEqual([])
  expect(sentences(judge({ spans: [at('4', 0), at('5', 10)] }))).toEqual([
    'Ana is at post 4 and is at post 5 at once, from 0:10 to 0:20 of segment 1.',
  ])
})

test('driving and marshalling go together where the rules allow it, driving and the wall never', () => {
  const also = [{ id: 'both', kind: 'marshalWhileDriving', value: { allowed: true } } as const]
  expect(judge({ spans: [drive('Ana', 0, 20), marshal('Ana', 0, 20)], also })).toEqual([])
  const wall = span({ person: 'Ana', duty: 'wall' }, 0, 20)
  expect(judge({ spans: [drive('Ana', 0, 20), wall], also })).toHaveLength(1)
})

test('duties of two segments are never at once, even where about when they begin is the same', () => {
  const segments = [hour({ lengthMs: undefined }), hour({ id: 'two', index: 1 })]
  const next = span({ person: 'Ana', duty: 'post', segment: 'two' }, 0, 20)
  expect(judge({ spans: [drive('Ana', 0, 20), next], segments })).toEqual([])
})
