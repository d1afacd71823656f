import { expect, test } from 'vitest'
import { padMs, padPush, padText } from './pad.ts'

test('digits fill from the right', () => {
  expect(padText('')).toBe('0:00:00')
  expect(padText('5')).toBe('0:00:05')
  expect(padText('11246')).toBe('1:12:46')
  expect(padText('235959')).toBe('23:59:59')
})

test('a clock reads as milliseconds', () => {
  // 1 h 12 min 46 s = 3600 + 720 + 46 = 4366 s
  expect(padMs('11246')).toBe(4_366_000)
  expect(padMs('5')).toBe(5_000)
})

test('minutes alone may pass 59, as some halls show them', () => {
  // 72 min 46 s = 4320 + 46 = 4366 s
  expect(padMs('7246')).toBe(4_366_000)
})

test('what is no clock reads as nothing', () => {
  expect(padMs('')).toBeUndefined()
  expect(padMs('60')).toBeUndefined()
  expect(padMs('17246')).toBeUndefined()
  expect(padMs('1234567')).toBeUndefined()
})

test('a full pad takes no more digits, an empty one no nought', () => {
  expect(padPush('123456', '7')).toBe('123456')
  expect(padPush('', '0')).toBe('')
  expect(padPush('1', '0')).toBe('10')
  expect(padPush('1', '00')).toBe('100')
  expect(padPush('12345', '00')).toBe('123450')
})
