import { expect, test } from 'vitest'
import { cells, columnsInTwoRows, grownPlace, undoColumns } from './verb.ts'

test('undo stands above the verb that was pressed, its words on the roomier side', () => {
  expect(undoColumns(0, 6)).toEqual({ button: 1, from: 2, to: 7 })
  expect(undoColumns(2, 6)).toEqual({ button: 3, from: 4, to: 7 })
  expect(undoColumns(5, 6)).toEqual({ button: 6, from: 1, to: 6 })
})

test('in two rows the second row stands under the first', () => {
  // Place 4 of six in three columns: second row, second column. 2 > 3 / 2, so the words stand left of it.
  expect(undoColumns(4, 3)).toEqual({ button: 2, from: 1, to: 2 })
})

test('a wide verb takes two cells', () => {
  const bar = [
    { id: 'more', word: 'More' },
    { id: 'carOut', word: 'Car out', wide: true },
  ]
  expect(cells(bar)).toBe(3)
  expect(columnsInTwoRows(bar)).toBe(3)
})

test('seven verbs leave a hole in two rows of four, and the first takes it', () => {
  const bar = ['carIn', 'change', 'deSlot', 'fault', 'powerOff', 'said', 'more'].map((id) => ({
    ...{ id, word: id, first: id === 'carIn' },
  }))
  expect(columnsInTwoRows(bar)).toBe(4)
  expect(grownPlace(bar)).toBe(0)
  expect(grownPlace(bar.slice(0, 6))).toBe(-1)
  expect(grownPlace(bar.slice(1))).toBe(-1)
})
