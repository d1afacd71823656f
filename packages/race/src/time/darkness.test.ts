import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { laneMeeting, SEGMENT_MS } from '../testing/lane-meeting.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE } from '../testing/small-meeting.ts'
import { darknessOf } from './darkness.ts'
import { segmentsOf } from './programme.ts'

const NOW = GREEN - MINUTE
/** GREEN is 08:00 by the venue's clock. */
const MIDNIGHT = GREEN - 480 * MINUTE

function darkness(rule: Rule, midnightAt?: number) {
  const state = laneMeeting({ also: [rule], segments: 3, midnightAt }).state()
  return segmentsOf(state, NOW).map((one) => darknessOf(state, one, NOW))
}
const is = (found: readonly { readonly is: string }[]) => found.map((one) => one.is)

const byName = (segments: string[] | 'notKnownYet'): Rule => {
  return { id: 'dark', kind: 'darkSegments', value: { segments } }
}
const byClock = (fromMinute: number, toMinute: number): Rule => {
  const value = { from: fromMinute * MINUTE, to: toMinute * MINUTE }
  return { id: 'hours', kind: 'darkHours', value }
}

test('by name', () => {
  const found = darkness(byName(['s2']))
  expect(is(found)).toEqual(['light', 'dark', 'light'])
  // The second begins 25 min after the first.
  expect(found[1]?.spans).toEqual([
    { fromAt: GREEN + 25 * MINUTE, toAt: GREEN + 25 * MINUTE + SEGMENT_MS },
  ])
  expect(is(darkness(byName('notKnownYet')))).toEqual(['notKnown', 'notKnown', 'notKnown'])
})

test('by the clock, a segment may be dark in part', () => {
  // From 8:30 to 9:12; segments run 8:00–8:20, 8:25–8:45, 8:50–9:10.
  const found = darkness(byClock(510, 552), MIDNIGHT)
  expect(is(found)).toEqual(['light', 'partly', 'dark'])
  expect(found[1]?.spans).toEqual([{ fromAt: GREEN + 30 * MINUTE, toAt: GREEN + 45 * MINUTE }])
})

test('hours of the clock say nothing before the rules say when midnight is', () => {
  expect(is(darkness(byClock(510, 552)))).toEqual(['notKnown', 'notKnown', 'notKnown'])
})

test('where no rule speaks of it the hall is light', () => {
  const restart: Rule = { id: 'restart', kind: 'restart', value: { at: 'startLine' } }
  expect(is(darkness(restart))).toEqual(['light', 'light', 'light'])
})
