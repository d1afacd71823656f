import { expect, it } from 'vitest'
import {
  about,
  atVenueTime,
  clockTime,
  countdown,
  figure,
  hoursMinutes,
  isTimeZone,
  venueTime,
} from './time.ts'

it('writes a duration in whole seconds passed', () => {
  // 1 h 12 min 46 s = 3,600 + 720 + 46 = 4,366 s; the rest of a second has not passed yet.
  expect([0, 23_999, 372_000, 4_366_000].map(figure)).toEqual(['0:00', '0:23', '6:12', '1:12:46'])
})

it('shows the size of a negative duration, for whoever writes "over" in front', () => {
  expect(figure(-7_400)).toBe('0:07')
})

it('counts down to 0:00 only when it is due', () => {
  expect([60_000, 59_001, 1_000, 1, 0, -5].map(countdown)).toEqual([
    '1:00',
    '1:00',
    '0:01',
    '0:01',
    '0:00',
    '0:00',
  ])
})

it('writes lengths as rules do, with seconds only where there are any', () => {
  expect([2_700_000, 7_200_000, 45_000].map(hoursMinutes)).toEqual(['0:45', '2:00', '0:00:45'])
})

it('says about how long ago', () => {
  expect([11_700, 720_000, 10_800_000].map(about)).toEqual(['12 s', '12 min', '3 h'])
})

// 2026-03-28 is a Saturday; Berlin goes from +01:00 to +02:00 on the night to the 29th at 01:00 UTC.
const saturdayEvening = Date.UTC(2026, 2, 28, 22, 8, 14)

it('writes clock times as the venue reads them', () => {
  expect(clockTime(saturdayEvening, 'Europe/Berlin')).toBe('23:08')
  expect(clockTime(saturdayEvening, 'Europe/Berlin', { seconds: true })).toBe('23:08:14')
  expect(clockTime(saturdayEvening, 'America/Los_Angeles')).toBe('15:08')
})

it('counts the hour after midnight as 00', () => {
  expect(clockTime(Date.UTC(2026, 2, 28, 23, 5), 'Europe/Berlin')).toBe('00:05')
})

it('carries the day past midnight, by the venue’s calendar and across the change of clocks', () => {
  const threeHoursLater = saturdayEvening + 3 * 3_600_000
  const options = { dayRelativeTo: saturdayEvening }
  // 23:08 + 3 h would be 02:08, but 02:00 to 03:00 does not exist in that night.
  expect(clockTime(threeHoursLater, 'Europe/Berlin', options)).toBe('Sun 03:08')
  expect(clockTime(threeHoursLater, 'UTC', options)).toBe('Sun 01:08')
  expect(clockTime(threeHoursLater, 'America/Los_Angeles', options)).toBe('18:08')
})

it('takes a zone this device does not know as UTC', () => {
  expect(isTimeZone('Europe/Nowhere')).toBe(false)
  expect(clockTime(saturdayEvening, 'Europe/Nowhere')).toBe('22:08')
})

it('finds the instant at which the venue’s clocks show a time, and back', () => {
  expect(atVenueTime('2026-03-28T23:08:14', 'Europe/Berlin')).toBe(saturdayEvening)
  expect(venueTime(saturdayEvening, 'Europe/Berlin')).toBe('2026-03-28T23:08:14')
  // On the next day it is summer time there: 12:00 is 10:00 UTC.
  expect(atVenueTime('2026-03-29T12:00', 'Europe/Berlin')).toBe(Date.UTC(2026, 2, 29, 10))
  expect(atVenueTime('yesterday', 'Europe/Berlin')).toBeUndefined()
})

it('takes the first of the two instants in the hour that comes twice', () => {
  // 2026-10-25 in Berlin: 02:30 is 00:30 UTC, and again 01:30 UTC.
  expect(atVenueTime('2026-10-25T02:30', 'Europe/Berlin')).toBe(Date.UTC(2026, 9, 25, 0, 30))
})

it('reads a time that the change of clocks leaves out as if they had not been changed yet', () => {
  // 2026-03-29 in Berlin: 02:30 does not exist; by winter time it is 01:30 UTC.
  expect(atVenueTime('2026-03-29T02:30', 'Europe/Berlin')).toBe(Date.UTC(2026, 2, 29, 1, 30))
})
