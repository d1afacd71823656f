import { expect, test } from 'vitest'
import { hoursOfClock } from './hours-of-clock.ts'

const HOUR = 3_600_000
const MIDNIGHT = 1_000 * 24 * HOUR
/** Hours from a midnight to hours, as hours from it. */
const hours = (from: number, to: number, within: readonly [number, number]) =>
  hoursOfClock(
    { midnightAt: MIDNIGHT, fromMs: from * HOUR, toMs: to * HOUR },
    { fromAt: MIDNIGHT + within[0] * HOUR, toAt: MIDNIGHT + within[1] * HOUR },
  ).map(({ fromAt, toAt }) => [(fromAt - MIDNIGHT) / HOUR, (toAt - MIDNIGHT) / HOUR])

test('a stretch of each day, cut to what is asked', () => {
  // A race from noon to noon.
  expect(hours(14, 18, [12, 36])).toEqual([[14, 18]])
  expect(hours(8, 13, [12, 36])).toEqual([
    [12, 13],
    [32, 36],
  ])
})

test('over midnight', () => {
  expect(hours(22, 6, [12, 36])).toEqual([[22, 30]])
  // It began the evening before.
  expect(hours(22, 6, [2, 24])).toEqual([
    [2, 6],
    [22, 24],
  ])
})

test('from an hour to the same hour is the whole day', () => {
  expect(hours(22, 22, [12, 36])).toEqual([
    [12, 22],
    [22, 36],
  ])
})

test('days are counted from the midnight given, backwards too', () => {
  expect(hours(22, 23, [-48, 0])).toEqual([
    [-26, -25],
    [-2, -1],
  ])
})

test('nothing where nothing is asked, or more than any meeting lasts', () => {
  expect(hours(22, 6, [12, 12])).toEqual([])
  expect(hours(22, 6, [0, 24 * 41])).toEqual([])
})
