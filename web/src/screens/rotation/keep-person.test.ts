import { CAPTAINS_DEFAULTS, type Plan, type PlanSpan } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { isPersonKept, keepPerson, letPersonGo } from './keep-person.ts'

const MINUTE_MS = 60_000
const segments = ['s1', 's2'].map((id) => ({ id, lengthMs: 60 * MINUTE_MS }))
const span = (id: string, person: string, of: Partial<PlanSpan> = {}): PlanSpan => ({
  ...{ id, person, duty: 'controller', segment: 's1' },
  ...{ fromMs: 20 * MINUTE_MS, toMs: 40 * MINUTE_MS, ...of },
})
const plan = (...spans: PlanSpan[]): Plan => ({ spans, stops: [], captain: CAPTAINS_DEFAULTS })
const keptOf = ({ spans }: Plan) =>
  spans
    .filter(({ pinned }) => pinned)
    .map(({ person, duty, segment, fromMs, toMs }) => [
      ...[person, duty, segment, fromMs / MINUTE_MS, toMs / MINUTE_MS],
    ])

test('all they do is kept, and the rest of their time is off duty', () => {
  const before = plan(span('a', 'Ida'), span('b', 'Tom', { fromMs: 0 }))
  const kept = keepPerson(before, 'Ida', segments)
  expect(keptOf(kept)).toEqual([
    ['Ida', 'controller', 's1', 20, 40],
    ['Ida', 'offDuty', 's1', 0, 20],
    ['Ida', 'offDuty', 's1', 40, 60],
    ['Ida', 'offDuty', 's2', 0, 60],
  ])
  expect(new Set(kept.spans.map(({ id }) => id)).size).toBe(5)
  const [ida, tom] = ['Ida', 'Tom'].map((person) => isPersonKept(kept, person, segments))
  expect([ida, tom]).toEqual([true, false])
})

test('somebody with no duty is kept off all of it', () => {
  expect(keptOf(keepPerson(plan(), 'Ida', segments))).toEqual([
    ['Ida', 'offDuty', 's1', 0, 60],
    ['Ida', 'offDuty', 's2', 0, 60],
  ])
})

test('let go, they are as they were; off duty that was written by hand stays', () => {
  const byHand = span('c', 'Ida', { duty: 'offDuty', segment: 's2' })
  const before = plan(span('a', 'Ida'), byHand, span('b', 'Tom', { pinned: true }))
  expect(letPersonGo(keepPerson(before, 'Ida', segments), 'Ida')).toEqual(before)
})

test('a line that was moved is not as it was kept, and keeping them again is', () => {
  const kept = keepPerson(plan(span('a', 'Ida')), 'Ida', segments)
  for (const toMs of [30 * MINUTE_MS, 50 * MINUTE_MS]) {
    const spans = kept.spans.map((one) => (one.id === 'a' ? { ...one, toMs } : one))
    const moved = { ...kept, spans }
    expect(isPersonKept(moved, 'Ida', segments)).toBe(false)
    const again = keepPerson(moved, 'Ida', segments)
    expect(keptOf(again)[2]).toEqual(['Ida', 'offDuty', 's1', toMs / MINUTE_MS, 60])
    expect(isPersonKept(again, 'Ida', segments)).toBe(true)
  }
})

test('without a segment nobody is kept', () => {
  expect(isPersonKept(plan(), 'Ida', [])).toBe(false)
})
