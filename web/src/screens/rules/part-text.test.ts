import type { Part } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { hintFor, readPart, writePart } from './part-text.ts'

const part = (is: Part['is'], more: Partial<Part> = {}) => ({ is, ...more }) as Part
const read = (is: Part['is'], ...texts: readonly string[]) =>
  texts.map((text) => readPart(part(is), text))

it('writes lengths in the unit people say them in', () => {
  // 45 s, 90 s, 10 min, 29:30 min, 30 min, 75 min.
  const lengths = [45_000, 90_000, 600_000, 1_770_000, 1_800_000, 4_500_000]
  expect(lengths.map((ms) => writePart('duration', ms))).toEqual([
    ...['45 s', '90 s', '10 min', '0:29:30', '0:30', '1:15'],
  ])
})

it('reads a length as hours and minutes, but as minutes and seconds where seconds are said', () => {
  expect(readPart(part('duration'), '0:45')).toBe(2_700_000)
  expect(readPart(part('duration', { plain: 's' }), '0:45')).toBe(45_000)
  expect(hintFor(part('duration', { plain: 's' }))).toBe('45 s or 1:30')
})

it('reads shares with and without their sign, in thousandths', () => {
  expect(read('share', '60 %', '12.5', '12,5%', '100')).toEqual([600, 125, 125, 1_000])
  expect(read('share', '101', '1.25', 'half')).toEqual([undefined, undefined, undefined])
  expect([writePart('share', 600), writePart('share', 125)]).toEqual(['60 %', '12.5 %'])
})

it('reads times of day up to midnight', () => {
  // 22:30 is 22.5 × 3,600,000.
  expect(read('clockTime', '22:30', '7.05', '24:00', '9:75')).toEqual([
    ...[81_000_000, 25_500_000, undefined, undefined],
  ])
  expect(writePart('clockTime', 25_500_000)).toBe('07:05')
})

it('reads whole numbers, one or a list of them', () => {
  expect(read('count', '12', '-1', '1.5')).toEqual([12, undefined, undefined])
  expect(read('counts', '25, 18,15', '25 18', '25, x')).toEqual([[25, 18, 15], [25, 18], undefined])
})

it('reads names in their order, blanks around them aside', () => {
  expect(read('names', 'red, white,dark blue', 'red;', ' , ')).toEqual([
    ...[['red', 'white', 'dark blue'], ['red'], undefined],
  ])
  expect(writePart('names', ['red', 'dark blue'])).toBe('red, dark blue')
})

it('reads nothing out of nothing', () => {
  expect(read('words', '', '  ')).toEqual([undefined, undefined])
})
