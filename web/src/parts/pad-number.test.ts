import { expect, test } from 'vitest'
import { countOf, countPush, decimalPush, milliOf, milliText } from './pad-number.ts'

const typed = (keys: string) => Array.from(keys).reduce(decimalPush, '')

test('a count has no leading nought and at most five digits', () => {
  expect(countPush('', '0')).toBe('0')
  expect(countPush('0', '7')).toBe('7')
  expect(countPush('12345', '6')).toBe('12345')
  expect(countOf('')).toBeUndefined()
  expect(countOf('892')).toBe(892)
})

test('a reading has one decimal point and at most three decimals', () => {
  expect(typed('1.05')).toBe('1.05')
  expect(typed('.8')).toBe('0.8')
  expect(typed('1.0.5')).toBe('1.05')
  expect(typed('1.2345')).toBe('1.234')
  expect(typed('007')).toBe('7')
})

test('readings are whole thousandths', () => {
  // 1.05 × 1000 = 1050; 212 × 1000 = 212 000; 0.8 × 1000 = 800
  expect(milliOf('1.05')).toBe(1_050)
  expect(milliOf('212')).toBe(212_000)
  expect(milliOf('0.8')).toBe(800)
  expect(milliOf('5.')).toBe(5_000)
  expect(milliOf('')).toBeUndefined()
})

test('they are shown as the gauge shows them', () => {
  expect(milliText(1_050)).toBe('1.05')
  expect(milliText(212_000)).toBe('212')
  expect(milliText(100_000)).toBe('100')
  expect(milliText(-800)).toBe('−0.8')
  expect(milliText(0)).toBe('0')
})
