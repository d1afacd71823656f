import { CAPTAINS_DEFAULTS, type Plan, type PlanSpan } from '@pitlamp/race'
import { expect, test } from 'vitest'
import {
  addSpanAt,
  addStopAt,
  changeStop,
  moveEdge,
  moveSpan,
  removeSpan,
  removeStop,
  splitSpan,
  swapSpans,
  turnPersonKept,
} from './plan-moves.ts'

const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS
const span = ([id, person]: readonly [string, string], from: number, to: number): PlanSpan => ({
  ...{ id, person, duty: 'controller', segment: 's1' },
  ...{ fromMs: from * MINUTE_MS, toMs: to * MINUTE_MS },
})
const plan = (...spans: PlanSpan[]): Plan => ({ spans, stops: [], captain: CAPTAINS_DEFAULTS })
const two = plan(span(['a', 'Ida'], 0, 30), span(['b', 'Tom'], 30, 60))
const shown = ({ spans }: Plan) =>
  spans.map(({ id, person, fromMs, toMs }) => [id, person, fromMs / MINUTE_MS, toMs / MINUTE_MS])

test('a handover moves as one: the end of one span and the beginning of the next', () => {
  const later = { id: 'a', edge: 'toMs', toMs: 40 * MINUTE_MS, lengthMs: HOUR_MS } as const
  expect(shown(moveEdge(two, later))).toEqual([
    ['a', 'Ida', 0, 40],
    ['b', 'Tom', 40, 60],
  ])
  const earlier = { id: 'b', edge: 'fromMs', toMs: 10 * MINUTE_MS, lengthMs: HOUR_MS } as const
  expect(shown(moveEdge(two, earlier))).toEqual([
    ['a', 'Ida', 0, 10],
    ['b', 'Tom', 10, 60],
  ])
})

test('rest is handed over to nobody', () => {
  const [ida, tom] = two.spans.map((one): PlanSpan => ({ ...one, duty: 'offDuty' }))
  const off = plan(...(ida && tom ? [ida, tom] : []))
  const later = { id: 'a', edge: 'toMs', toMs: 40 * MINUTE_MS, lengthMs: HOUR_MS } as const
  expect(shown(moveEdge(off, later))).toEqual([
    ['a', 'Ida', 0, 40],
    ['b', 'Tom', 30, 60],
  ])
})

test('somebody is kept as planned, and let go', () => {
  const ida = turnPersonKept(two, 'Ida')
  const both = turnPersonKept(ida, 'Tom')
  expect([ida, both].map(({ keptPeople }) => keptPeople)).toEqual([['Ida'], ['Ida', 'Tom']])
  expect(turnPersonKept(both, 'Ida').keptPeople).toEqual(['Tom'])
  expect(turnPersonKept(ida, 'Ida')).toEqual(two)
})

test('an edge stays in its segment and leaves a minute of either span', () => {
  const move = (id: string, edge: 'fromMs' | 'toMs', minutes: number) =>
    shown(moveEdge(two, { id, edge, toMs: minutes * MINUTE_MS, lengthMs: HOUR_MS }))
  expect(move('b', 'toMs', 90)).toEqual(shown(two))
  expect(move('a', 'toMs', 75)[1]).toEqual(['b', 'Tom', 59, 60])
  expect(move('a', 'toMs', -5)[0]).toEqual(['a', 'Ida', 0, 1])
})

test('spans of other duties do not move along', () => {
  const post = { ...span(['m', 'Bea'], 30, 60), duty: 'post' as const }
  const moved = moveEdge(plan(span(['a', 'Ida'], 0, 30), post), {
    ...{ id: 'a', edge: 'toMs', toMs: 20 * MINUTE_MS, lengthMs: HOUR_MS },
  })
  expect(shown(moved)[1]).toEqual(['m', 'Bea', 30, 60])
})

test('a span moves whole, to another person, and never out of its segment', () => {
  const to = { segment: 's1', clockMs: 50 * MINUTE_MS }
  expect(shown(moveSpan(two, { id: 'a', person: 'Bea', to, lengthMs: HOUR_MS }))[0]).toEqual([
    'a',
    'Bea',
    30,
    60,
  ])
})

test('splitting keeps the whole, and only inside', () => {
  expect(shown(splitSpan(two, 'a', 12 * MINUTE_MS))).toEqual([
    ['a', 'Ida', 0, 12],
    ['p3', 'Ida', 12, 30],
    ['b', 'Tom', 30, 60],
  ])
  expect(splitSpan(two, 'a', 30 * MINUTE_MS)).toBe(two)
})

test('two people swap what they are to do', () => {
  expect(shown(swapSpans(two, 'a', 'b')).map(([, person]) => person)).toEqual(['Tom', 'Ida'])
  expect(swapSpans(two, 'a', 'gone')).toBe(two)
})

test('a new span ends where the next of its duty begins, and none is squeezed in', () => {
  const open = plan(span(['b', 'Tom'], 20, 60))
  const at = { segment: 's1', clockMs: 0 }
  const added = addSpanAt(open, { person: 'Ida', duty: 'controller', at, lengthMs: HOUR_MS })
  expect(shown(added)[1]).toEqual(['p2', 'Ida', 0, 20])
  const full = { segment: 's1', clockMs: HOUR_MS }
  expect(addSpanAt(open, { person: 'Ida', duty: 'wall', at: full, lengthMs: HOUR_MS })).toBe(open)
})

test('stops are added, moved and removed', () => {
  const added = addStopAt(two, { segment: 's1', clockMs: 30 * MINUTE_MS }, true)
  expect(added.stops).toEqual([{ id: 't1', segment: 's1', atMs: 1_800_000, mandatory: true }])
  expect(changeStop(added, 't1', { atMs: 60_000 }).stops[0]?.atMs).toBe(60_000)
  expect(removeStop(added, 't1').stops).toEqual([])
  expect(shown(removeSpan(two, 'a'))).toEqual([['b', 'Tom', 30, 60]])
})
