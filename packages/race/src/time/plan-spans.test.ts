import { expect, test } from 'vitest'
import type { Plan } from '../documents/plan.ts'
import { PEOPLE } from '../testing/ids.ts'
import { plan, span } from '../testing/small-meeting.ts'
import { plannedDuties } from './plan-spans.ts'

const { Solveig, Okello } = PEOPLE

function duties(spans: Plan['spans']) {
  const read = plannedDuties({ ...plan, spans }, 'one')
  return read.map(({ id, fromMs, toMs }) => [id, fromMs, toMs])
}

const drives = (lineId: string, person: string, [fromMs, toMs]: readonly [number, number]) =>
  span(lineId, person, { duty: 'controller', fromMs, toMs })

test('spans of one person and duty without a gap are one, under the id of the first', () => {
  const spans = [
    drives('c', Okello, [300, 400]),
    drives('b', Solveig, [100, 200]),
    drives('a', Solveig, [0, 100]),
    drives('d', Solveig, [201, 300]),
  ]
  expect(duties(spans)).toEqual([
    ['a', 0, 200],
    ['d', 201, 300],
    ['c', 300, 400],
  ])
})

test('another duty, another post or another segment is not the same', () => {
  const post = (lineId: string, number: string, fromMs: number) =>
    span(lineId, Okello, { duty: 'post', post: number, fromMs, toMs: fromMs + 100 })
  const elsewhere = { ...post('d', '4', 300), segment: 'two' }
  expect(duties([post('a', '4', 0), post('b', '7', 100), post('c', '4', 200), elsewhere])).toEqual([
    ['a', 0, 100],
    ['b', 100, 200],
    ['c', 200, 300],
  ])
})

test('a span within another of the same duty adds nothing', () => {
  expect(duties([drives('a', Solveig, [0, 300]), drives('b', Solveig, [100, 200])])).toEqual([
    ['a', 0, 300],
  ])
})
