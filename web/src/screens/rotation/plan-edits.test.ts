import type { Crew, Plan, Regulations } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { addSpan, addStops } from './plan-edits.ts'

const MINUTE_MS = 60_000
const person = (id: string) => ({ id, name: id, duties: ['controller' as const, 'post' as const] })

function written() {
  const rules: Regulations = {
    name: 'Forty and twenty',
    timeZone: 'UTC',
    programme: [
      { id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 40 * MINUTE_MS } },
      { id: 's2', kind: 'segment', length: { by: 'time', lengthMs: 20 * MINUTE_MS } },
    ],
    rules: [
      {
        id: 'w',
        kind: 'stopWindows',
        value: {
          windows: [{ id: 'w1', segment: 's1', fromMs: 10 * MINUTE_MS, toMs: 20 * MINUTE_MS }],
        },
      },
    ],
  }
  const crew: Crew = { people: [person('ana'), person('ben')] }
  const plan: Plan = {
    spans: [],
    stops: [],
    captain: { goMarginMs: 0, askForClockAtMs: 0, hotWorkInStops: false },
  }
  return { rules, crew, plan }
}
const stints = ({ plan }: { plan: Plan }) =>
  plan.spans.map(({ person, segment, fromMs, toMs }) => [
    person,
    segment,
    fromMs / MINUTE_MS,
    toMs / MINUTE_MS,
  ])

it('adds the next stint for whoever drove least recently, up to the end of each segment', () => {
  const all = written()
  for (let count = 0; count < 4; count += 1) addSpan(all, 'controller')
  expect(stints(all)).toEqual([
    ['ana', 's1', 0, 30],
    ['ben', 's1', 30, 40],
    ['ana', 's2', 0, 20],
  ])
})

it('gives a duty to somebody who is free then', () => {
  const all = written()
  addSpan(all, 'controller')
  addSpan(all, 'post')
  expect(stints(all)).toEqual([
    ['ana', 's1', 0, 30],
    ['ben', 's1', 0, 30],
  ])
})

it('plans one stop in the middle of each window that has none', () => {
  const all = written()
  addStops(all)
  expect(all.plan.stops).toMatchObject([{ segment: 's1', atMs: 15 * MINUTE_MS, mandatory: true }])
})
