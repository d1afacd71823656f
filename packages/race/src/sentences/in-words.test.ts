import { expect, it } from 'vitest'
import type { Rule, RuleKind, RuleValue } from '../rules/index.ts'
import { sentenceOf } from './in-words.ts'

const MINUTE_MS = 60_000
const HOUR_MS = 3_600_000
const names = { segment: (id: string) => `Segment ${id}` }

function says<K extends RuleKind>(kind: K, value: RuleValue<K>): string {
  return sentenceOf({ id: 'r1', kind, value } as Rule, names)
}

it('leaves out what the rule does not say, and joins what it does', () => {
  // 1:15 is 75 min, 2:00 is 120 min.
  expect(says('drivingTime', { atLeastMs: 75 * MINUTE_MS, atMostMs: 2 * HOUR_MS })).toBe(
    'Each driver drives at least 1:15 and at most 2:00 in the race.',
  )
  expect(says('drivingTime', { who: 'junior', atMostMs: 2 * HOUR_MS })).toBe(
    'Each driver (junior only) drives at most 2:00 in the race.',
  )
})

it('begins with a capital, whatever comes first', () => {
  expect(says('numberOfDrivers', { atMost: 6 })).toBe('At most 6 drivers drive in the race.')
  expect(says('numberOfDrivers', { atLeast: 4, atMost: 6 })).toBe(
    'At least 4 and at most 6 drivers drive in the race.',
  )
})

it('says what is not known yet', () => {
  const value = { minimumMs: 45_000, from: 'stopped', to: 'notKnownYet' } as const
  expect(says('stopMinimum', value)).toBe(
    'Each lasts at least 45 s, timed from the car stopped to not known yet.',
  )
})

it('counts one of a thing as one', () => {
  expect(says('mandatoryStops', { count: 1, per: 'race' })).toBe('1 stop in the whole race.')
  expect(says('mandatoryStops', { count: 11, per: 'race' })).toBe('11 stops in the whole race.')
})

it('writes lengths under two minutes in seconds, shares in per cent, hours as the clock', () => {
  expect(says('drivingSpread', { atMostMs: 119_500 })).toContain('at most 119.5 s')
  expect(says('drivingSpread', { atMostMs: 120_000 })).toContain('at most 0:02')
  expect(says('classified', { atLeast: 725 })).toContain('72.5 %')
  // 22:30 is 22.5 h, 06:05 is 6 h and 5 min after midnight.
  expect(says('darkHours', { from: 81_000_000, to: 21_900_000 })).toBe(
    'The hall is dark from 22:30 to 06:05 by the clock.',
  )
})

it('lists segments, windows, choices and tables', () => {
  expect(says('darkSegments', { segments: ['5', '6', '7'] })).toBe(
    'The hall is dark in Segment 5, Segment 6 and Segment 7.',
  )
  const window = { id: 'w', segment: '1', fromMs: 10 * MINUTE_MS, toMs: HOUR_MS }
  expect(says('stopWindows', { windows: [window] })).toBe(
    'A stop is taken in Segment 1 from 0:10 to 1:00.',
  )
  expect(says('ties', { order: ['bestLap', 'runOff'] })).toBe(
    'A tie is broken by the best lap and a run-off, in that order.',
  )
  expect(says('points', { per: 'stage', table: [25, 18, 15] })).toBe(
    'Points for each stage: 25, 18, 15.',
  )
})
