import { expect, test } from 'vitest'
import { clockTime, lengthWords } from './wording.ts'

test('a clock time is the venue’s, with its day and how far it is from UTC', () => {
  // 29 March 2027 is a Monday; summer time began the day before.
  const at = Date.UTC(2027, 2, 28, 22, 59, 59)
  expect(clockTime(at, 'Europe/Berlin')).toBe('Mon 29 Mar 00:59 GMT+2')
  expect(clockTime(at, 'America/St_Johns')).toBe('Sun 28 Mar 20:29 GMT-2:30')
})

test('a length is hours, minutes and seconds, as far as they are full', () => {
  // 25 × 3,600,000 + 4 × 60,000 + 5,999.
  expect(lengthWords(90_245_999)).toBe('25:04:05')
  expect(lengthWords(59_000)).toBe('0:00:59')
})
