import { expect, test } from 'vitest'
import { pastedLines } from './pasted.ts'

test('place, entrant, laps and section, whatever sets columns apart', () => {
  const line = { place: 2, entrant: 'Red Wren', laps: 412, section: 35 }
  for (const row of ['2\tRed Wren\t412.35', '2; Red Wren; 412.35', '2.  Red Wren   412.35']) {
    expect(pastedLines(row)).toEqual({ lines: [line], unread: [] })
  }
})

test('a section is a second whole number, never a decimal', () => {
  const sections = (row: string) => pastedLines(row).lines[0]?.section
  expect(sections('1\tWren\t412.05')).toBe(5)
  expect(sections('1\tWren\t412.5')).toBe(5)
  expect(sections('1\tWren\t412')).toBeUndefined()
})

test('rows without a place are placed as they stand, headings and empty rows are passed over', () => {
  const text = 'Team\tLaps\r\n\r\nWren\t20\r\nUs\t19'
  expect(pastedLines(text).lines).toEqual([
    { place: 1, entrant: 'Wren', laps: 20 },
    { place: 2, entrant: 'Us', laps: 19 },
  ])
})

test('an entrant may be called by a number or have several columns', () => {
  expect(pastedLines('3\t24\tLantern\t88').lines).toEqual([
    { place: 3, entrant: '24 Lantern', laps: 88 },
  ])
})

test('what cannot be read is given back', () => {
  const { lines, unread } = pastedLines('1\tWren\t20\nour 2nd car broke\n3\t9')
  expect(lines.map(({ entrant }) => entrant)).toEqual(['Wren'])
  expect(unread).toEqual(['our 2nd car broke', '3\t9'])
  const many = Array.from({ length: 61 }, (_, place) => `${place + 1}\tTeam\t10`).join('\n')
  expect(pastedLines(many)).toMatchObject({ unread: ['61\tTeam\t10'] })
})
