import type { Obligation } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { dueShown, obligationShown } from './due.ts'

const MINUTE = 60_000
const one = (id: string, kind: Obligation['kind'], minutes: number): Obligation => ({
  id,
  kind,
  dueAt: minutes * MINUTE,
  held: false,
  concerns: [],
  label: id,
})

test('of equally urgent obligations a stop comes before people, the segment’s end last', () => {
  const all = [
    one('nextDuty:a', 'nextDuty', 10),
    one('segmentEnd:r', 'segmentEnd', 8),
    one('plannedStop:p', 'plannedStop', 30),
  ]
  const { card, lines } = dueShown(all, 0)
  expect(card?.id).toBe('plannedStop:p')
  expect(lines.map(({ id }) => id)).toEqual(['segmentEnd:r', 'nextDuty:a'])
})

test('what is more urgent takes the card from everything', () => {
  const all = [one('plannedStop:p', 'plannedStop', 30), one('relief:a', 'relief', 0.5)]
  expect(dueShown(all, 0).card?.id).toBe('relief:a')
})

test('what stands elsewhere on the wall is not told again', () => {
  const all = [
    one('stintEnd:r', 'stintEnd', 1),
    one('callUnanswered:c', 'callUnanswered', 1),
    one('readTheClock:r', 'readTheClock', 0),
    one('stopGo:s', 'stopGo', 1),
  ]
  const { card, lines, told } = dueShown(all, 0)
  expect({ card, lines }).toEqual({ card: undefined, lines: [] })
  expect(told).toEqual(all.map(({ id }) => id))
})

test('people of the handover on the left and the duty a relief begins are told once', () => {
  const all = [
    one('relief:a', 'relief', 10),
    one('nextDuty:a', 'nextDuty', 10),
    one('nextDuty:b', 'nextDuty', 20),
  ]
  expect(dueShown(all, 0, { handoverAt: 20 * MINUTE })).toMatchObject({
    card: { id: 'relief:a' },
    lines: [],
  })
})

test('what has no room on the wall is left to an alert', () => {
  const all = [1, 2, 3, 4].map((n) => one(`plannedStop:${n}`, 'plannedStop', 30 * n))
  expect([...dueShown(all, 0).told].sort()).toEqual([
    'plannedStop:1',
    'plannedStop:2',
    'plannedStop:3',
  ])
})

test('an obligation counts down, then up, in its own words', () => {
  const stop = one('plannedStop:p', 'plannedStop', 10)
  // Nothing says how long it is, so the wick is its last 30 minutes: 10 / 30.
  expect(obligationShown(stop, 0)).toMatchObject({
    label: 'Next, in',
    figure: '10:00',
    urgency: 'calm',
  })
  expect(obligationShown(stop, 0).left).toBeCloseTo(0.333, 3)
  expect(obligationShown(stop, 9.5 * MINUTE)).toMatchObject({
    label: 'due in',
    figure: '00:30',
    urgency: 'now',
  })
  expect(obligationShown(stop, 11 * MINUTE)).toMatchObject({ label: 'overdue', figure: '+1:00' })
})
