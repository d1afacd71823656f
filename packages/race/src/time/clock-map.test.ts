import { expect, test } from 'vitest'
import type { SegmentRun } from '../fold/state.ts'
import { atOf, clockAt } from './clock-map.ts'

/**
 * Green at 1,000 s. Runs to 1,100 s (clock 100 s), stands to 1,130 s, runs to 1,200 s (clock 170 s), where a
 * reading sets it on to 180 s, and at 1,300 s (clock 280 s) another sets it back to 275 s.
 */
const run: SegmentRun = {
  ...{ entry: 'green', segment: 'one', length: { by: 'time', lengthMs: 600_000 } },
  greenAt: 1_000_000,
  knots: [
    { at: 1_000_000, clockMs: 0, rate: 1, boundMs: 1_000 },
    { at: 1_100_000, clockMs: 100_000, rate: 0, boundMs: 2_000 },
    { at: 1_130_000, clockMs: 100_000, rate: 1, boundMs: 3_000 },
    { at: 1_200_000, clockMs: 180_000, rate: 1, boundMs: 1_000 },
    { at: 1_300_000, clockMs: 275_000, rate: 1, boundMs: 1_000 },
  ],
}

test('the race clock is 0 before green, goes at its rate, and carries the bound of its knot', () => {
  expect(clockAt(run, 999_999)).toEqual({ clockMs: 0, boundMs: 1_000, rate: 0 })
  expect(clockAt(run, 1_050_000)).toEqual({ clockMs: 50_000, boundMs: 1_000, rate: 1 })
  expect(clockAt(run, 1_120_000)).toEqual({ clockMs: 100_000, boundMs: 2_000, rate: 0 })
  expect(clockAt(run, 1_150_000)).toEqual({ clockMs: 120_000, boundMs: 3_000, rate: 1 })
  expect(clockAt(run, 1_310_000)).toEqual({ clockMs: 285_000, boundMs: 1_000, rate: 1 })
})

test('after the end of a run its clock stays on what it ended on', () => {
  const over = { ...run, endAt: 1_400_000 }
  expect(clockAt(over, 1_399_000)).toMatchObject({ clockMs: 374_000, rate: 1 })
  expect(clockAt(over, 1_500_000)).toMatchObject({ clockMs: 375_000, rate: 0 })
  expect(atOf(over, 600_000, 1_500_000)).toBe(1_400_000)
})

test('what is to come runs on at rate 1 from now', () => {
  expect(atOf(run, 600_000, 1_310_000)).toBe(1_625_000)
})

test('L29: while the clock stands, what is to come slides with now', () => {
  const standing = { ...run, knots: run.knots.slice(0, 2) }
  expect(atOf(standing, 160_000, 1_110_000)).toBe(1_170_000)
  expect(atOf(standing, 160_000, 1_120_000)).toBe(1_180_000)
})

test('a past position is when the clock passed it: last, where it did so twice', () => {
  const now = 1_310_000
  expect(atOf(run, 0, now)).toBe(1_000_000)
  expect(atOf(run, 50_000, now)).toBe(1_050_000)
  expect(atOf(run, 120_000, now)).toBe(1_150_000)
  // 276 s was passed at 1,296 s, and again after the reading set the clock back to 275 s.
  expect(atOf(run, 276_000, now)).toBe(1_301_000)
})

test('a position the clock jumped over is at the jump', () => {
  expect(atOf(run, 175_000, 1_310_000)).toBe(1_200_000)
})

test('before the last knot, now counts as that knot', () => {
  expect(atOf(run, 600_000, 1_000_000)).toBe(1_625_000)
})
