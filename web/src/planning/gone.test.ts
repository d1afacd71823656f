import { expect, it } from 'vitest'
import { backAt, shownWith } from './gone.ts'

const line = (id: string) => ({ id })
const ids = (shown: ReturnType<typeof shownWith<{ id: string }>>) =>
  shown.map(({ line, isGone }) => (isGone ? `(${line.id})` : line.id)).join(' ')

// a b c d, of which b was taken out at 1, then c at 1.
const gone = [
  { line: line('b'), index: 1 },
  { line: line('c'), index: 1 },
]
const shown = shownWith([line('a'), line('d')], gone)

it('shows what was taken out where it stood', () => {
  expect(ids(shown)).toBe('a (b) (c) d')
})

it('brings a line back between those that are still there', () => {
  expect(backAt(shown, 'c')).toBe(1)
  const last = shownWith([line('a'), line('b')], [{ line: line('c'), index: 2 }])
  expect(backAt(last, 'c')).toBe(2)
})

it('keeps places while lines are added at the end', () => {
  expect(ids(shownWith([line('a'), line('d'), line('e')], gone))).toBe('a (b) (c) d e')
})
