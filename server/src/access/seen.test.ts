import { expect, test } from 'vitest'
import { Seen } from './seen.ts'

test('a device that asks again and again is noted once a minute, each for itself', () => {
  let now = 1_000_000
  const seen = new Seen(() => now)
  expect([seen.isNews('a'), seen.isNews('a'), seen.isNews('b')]).toEqual([true, false, true])
  now += 59_999
  expect(seen.isNews('a')).toBe(false)
  now += 1
  expect(seen.isNews('a')).toBe(true)
  // The captain sets the clock an hour back.
  now -= 3_600_000
  expect(seen.isNews('a')).toBe(true)
})
