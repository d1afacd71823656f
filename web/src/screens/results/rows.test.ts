import { expect, test } from 'vitest'
import {
  emptyRows,
  linesOf,
  nextCell,
  pastedRows,
  withDigit,
  withOurs,
  withoutDigit,
  withTeam,
  type Row,
} from './rows.ts'

/** `51.20` typed into a row; `51` without a section. */
function typed(rows: readonly Row[], row: string, distance: string): readonly Row[] {
  const [laps = '', section = ''] = distance.split('.')
  const withLaps = laps
    .split('')
    .reduce((all, digit) => withDigit(all, { row, field: 'laps' }, digit), rows)
  return section
    .split('')
    .reduce((all, digit) => withDigit(all, { row, field: 'section' }, digit), withLaps)
}

test('places follow from laps and sections; equal distances share one', () => {
  let rows = withTeam(withTeam(emptyRows([], 'Wren'), 'Tallow Works'), 'Fen Lights')
  rows = withTeam(rows, ' Late ')
  rows = typed(typed(typed(rows, '0', '51.20'), '1', '52.05'), '2', '51.20')
  // 52.05, then 51.20 twice: 1, 2, 2. Late typed nothing and is left out.
  expect(linesOf(rows)).toEqual([
    { place: 1, entrant: 'Tallow Works', laps: 52, section: 5 },
    { place: 2, entrant: 'Wren', laps: 51, section: 20, ours: true },
    { place: 2, entrant: 'Fen Lights', laps: 51, section: 20 },
  ])
})

test('nothing is said while nobody is ours or ours is not typed', () => {
  const rows = withTeam(emptyRows([], 'Wren'), 'Tallow Works')
  expect(linesOf(typed(rows, '1', '50'))).toBeUndefined()
  expect(linesOf(withOurs(typed(rows, '1', '50'), '1'))).toEqual([
    { place: 1, entrant: 'Tallow Works', laps: 50, ours: true },
  ])
})

test('the thumb goes from laps to section to the next team', () => {
  const rows = withTeam(emptyRows([], 'Wren'), 'Tallow Works')
  expect(nextCell(rows, { row: '0', field: 'laps' }, true)).toEqual({ row: '0', field: 'section' })
  expect(nextCell(rows, { row: '0', field: 'section' }, true)).toEqual({ row: '1', field: 'laps' })
  expect(nextCell(rows, { row: '0', field: 'laps' }, false)).toEqual({ row: '1', field: 'laps' })
})

test('pasted places stand until a digit is changed', () => {
  const lines = [
    { place: 1, entrant: 'Fen Lights', laps: 50 },
    { place: 2, entrant: 'WREN', laps: 51, section: 3 },
  ]
  const rows = pastedRows(lines, 'Wren')
  expect(linesOf(rows)?.map(({ place, ours }) => [place, ours])).toEqual([
    [1, undefined],
    [2, true],
  ])
  const changed = withoutDigit(rows, { row: '0', field: 'laps' })
  // 51.3 against 5.
  expect(linesOf(changed)?.map(({ entrant, place }) => [entrant, place])).toEqual([
    ['WREN', 1],
    ['Fen Lights', 2],
  ])
})
