import { expect, test } from 'vitest'
import { across, hoursIn, placed, viewOf } from './ribbon.ts'

const HOUR = 3_600_000

test('the ribbon looks one hour back and three ahead', () => {
  // A race from 10 h to 34 h, now 20 h: 19 h to 23 h.
  expect(viewOf({ fromAt: 10 * HOUR, toAt: 34 * HOUR }, 20 * HOUR, false)).toEqual({
    fromAt: 19 * HOUR,
    toAt: 23 * HOUR,
  })
})

test('near the start and the end it shows four hours of race all the same', () => {
  // Edge 5 min = 300 000 ms: 36 000 000 − 300 000 = 35 700 000; 4 h = 14 400 000 further: 50 100 000.
  expect(viewOf({ fromAt: 36_000_000, toAt: 122_400_000 }, 36_060_000, false)).toEqual({
    fromAt: 35_700_000,
    toAt: 50_100_000,
  })
  // 122 400 000 + 300 000 = 122 700 000; 4 h back: 108 300 000.
  expect(viewOf({ fromAt: 36_000_000, toAt: 122_400_000 }, 122_000_000, false)).toEqual({
    fromAt: 108_300_000,
    toAt: 122_700_000,
  })
})

test('the whole race is shown with an edge, and so is a short one', () => {
  const short = { fromAt: HOUR, toAt: 3 * HOUR }
  expect(viewOf(short, 2 * HOUR, false)).toEqual(viewOf(short, 2 * HOUR, true))
  expect(viewOf(short, 2 * HOUR, true)).toEqual({ fromAt: 3_300_000, toAt: 11_100_000 })
})

test('a view is never empty', () => {
  expect(viewOf({ fromAt: HOUR, toAt: HOUR }, HOUR, false)).toEqual({
    fromAt: 3_300_000,
    toAt: 3_900_000,
  })
})

test('times lie across in proportion and bands are cut to the view', () => {
  const view = { fromAt: 0, toAt: 4 * HOUR }
  expect(across(view, 400, HOUR)).toBe(100)
  expect(placed(view, 400, { fromAt: -HOUR, toAt: HOUR })).toEqual({ x: 0, width: 100 })
  expect(placed(view, 400, { fromAt: 5 * HOUR, toAt: 6 * HOUR })).toBeUndefined()
})

test('full hours are thinned to what has room', () => {
  const view = { fromAt: 30 * 60_000, toAt: 4 * HOUR + 30 * 60_000 }
  expect(hoursIn(view, 8)).toEqual([HOUR, 2 * HOUR, 3 * HOUR, 4 * HOUR])
  expect(hoursIn(view, 2)).toEqual([HOUR, 3 * HOUR])
})
