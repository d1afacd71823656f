import { expect, it } from 'vitest'
import { readDuration, writeDuration } from './durations.ts'

it('reads colons as hours and minutes, and seconds only behind a second one', () => {
  // 1:15 is 75 min = 4,500 s; 0:00:45 is 45 s.
  expect(readDuration('1:15', 'h')).toBe(4_500_000)
  expect(readDuration('0:00:45', 'h')).toBe(45_000)
})

it('reads colons as minutes and seconds where seconds are asked for', () => {
  expect(readDuration('0:45', 's')).toBe(45_000)
  expect(readDuration('1:30', 's')).toBe(90_000)
})

it('reads a bare number in the unit of its place, and a named unit anywhere', () => {
  expect(readDuration('45', 's')).toBe(45_000)
  expect(readDuration('10', 'min')).toBe(600_000)
  expect(readDuration('10 min', 's')).toBe(600_000)
  expect(readDuration('1,5 h', 'min')).toBe(5_400_000)
})

it('takes nothing that is no length', () => {
  expect(['', 'soon', '1:75', '-5', '9999 h'].map((text) => readDuration(text, 'min'))).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
    undefined,
  ])
})

it('writes a length in the words of its place', () => {
  expect([
    writeDuration(2_400_000, 'h'),
    writeDuration(600_000, 'min'),
    writeDuration(45_000, 's'),
    writeDuration(90_000, 'min'),
    writeDuration(2_500, 's'),
  ]).toEqual(['0:40', '10 min', '45 s', '90 s', '2.5 s'])
})
