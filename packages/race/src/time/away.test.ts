import { expect, test } from 'vitest'
import { judge } from '../checks/judge.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { planTimeline } from '../timeline/timeline.ts'
import { awayNow } from './away.ts'

const { Okello } = PEOPLE
const SAID = GREEN - MINUTE

function away(state: 'late' | 'away' | 'unwell' | 'wantsRelief' | 'here', until?: number) {
  const pressing = smallMeeting()
  const body = until === undefined ? {} : { until: GREEN + until * MINUTE }
  pressing.press(SAID, 'availability.1', { person: Okello, state, ...body })
  return pressing.state()
}
const until = (state: ReturnType<typeof away>, now: number) =>
  ((awayNow(state, GREEN + now * MINUTE).get(Okello)?.toAt ?? NaN) - GREEN) / MINUTE

test('to the time that was said, and on while nobody says the person is here', () => {
  expect(until(away('late', 12), 5)).toBe(12)
  expect(until(away('late', 12), 14)).toBe(14)
  expect(until(away('away', 12), 5)).toBe(12)
})

test('without a time who is late may come at any moment, and the others do not', () => {
  expect(until(away('late'), 5)).toBe(5)
  expect(until(away('unwell'), 5)).toBe(Infinity)
})

test('here and wanting relief are there', () => {
  expect(awayNow(away('here'), GREEN).size + awayNow(away('wantsRelief'), GREEN).size).toBe(0)
})

test('the checks say whose planned duties are impossible', () => {
  // Okello drives from 10 to 20 and comes at 14.
  const state = away('late', 14)
  const found = judge(state, planTimeline(state, GREEN), GREEN)
  expect(found.filter(({ id }) => id === 'isThere:away').map(({ sentence }) => sentence)).toEqual([
    'Okello drives from 0:10 to 0:20 of segment 1 and is not there for 0:04 of it.',
  ])
})
