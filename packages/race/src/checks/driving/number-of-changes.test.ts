import { expect, test } from 'vitest'
import { drive, found, hour, span } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

// Ana, Ben, Ana, with herself at 50, and Ana again after a break: 2 changes, 4 stints of which one is after the break.
const segments = [hour(), hour({ id: 'two', index: 1, after: 'break' })]
const spans = [
  ...[drive('Ana', 0, 20), drive('Ben', 20, 40), drive('Ana', 40, 50), drive('Ana', 50, 60)],
  span({ person: 'Ana', duty: 'controller', segment: 'two', startsAfter: 90 }, 0, 60),
]
const judge = (of: 'changes' | 'stints', atLeast: number, atMost: number) =>
  found({ spans, segments, kind: 'numberOfChanges', value: { of, atLeast, atMost } })

test('changes and stints: kept, just kept, broken', () => {
  expect(verdicts(judge('changes', 1, 3))).toEqual([
    ['kept', 2, 1],
    ['kept', 2, 1],
  ])
  expect(verdicts(judge('changes', 2, 2))).toEqual([
    ['kept', 2, 0],
    ['kept', 2, 0],
  ])
  expect(sentences(judge('changes', 3, 1))).toEqual([
    'In the race there are 2 driver changes, at least 3.',
    'In the race there are 2 driver changes, at most 1.',
  ])
  expect(verdicts(judge('stints', 4, 4))).toEqual([
    ['kept', 4, 0],
    ['kept', 4, 0],
  ])
})

test('a change with oneself counts where it begins a stint', () => {
  const also = [{ id: 'oneself', kind: 'changeWithOneself', value: { begins: true } } as const]
  const value = { of: 'changes', atLeast: 3 } as const
  expect(verdicts(found({ spans, segments, also, kind: 'numberOfChanges', value }))).toEqual([
    ['kept', 3, 0],
  ])
})

test('too few are open while the race goes on', () => {
  const value = { of: 'changes', atLeast: 3, atMost: 1 } as const
  const going = { spans, segments, isWhole: false }
  expect(verdicts(found({ ...going, kind: 'numberOfChanges', value }))).toEqual([
    ['open', 2, -1],
    ['broken', 2, -1],
  ])
})
