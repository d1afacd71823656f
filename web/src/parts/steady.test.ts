import { expect, test } from 'vitest'
import { steady } from './steady.ts'

test('a countdown keeps the width it began with', () => {
  expect(steady('6:12', '45:00')).toBe('06:12')
  expect(steady('6:12', '1:10:00')).toBe('0:06:12')
  expect(steady('0:05', '12:00:00')).toBe('00:00:05')
})

test('what is longer than expected stays whole', () => {
  expect(steady('1:02:10', '45:00')).toBe('1:02:10')
})
