import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { TakenOut } from './taken-out.svelte.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

function threeLines() {
  const lines = ['a', 'b', 'c'].map((id) => ({ id }))
  const taken = new TakenOut(() => lines)
  const shown = () => taken.shown.map(({ line, isGone }) => (isGone ? `(${line.id})` : line.id))
  return { taken, shown, ids: () => lines.map(({ id }) => id) }
}

it('keeps a line in its place for ten seconds, and forgets it then', () => {
  const { taken, shown, ids } = threeLines()
  taken.takeOut('b')
  expect(ids()).toEqual(['a', 'c'])
  vi.advanceTimersByTime(9_999)
  expect(shown()).toEqual(['a', '(b)', 'c'])
  expect(taken.ids).toEqual([{ id: 'b' }])
  vi.advanceTimersByTime(1)
  expect(shown()).toEqual(['a', 'c'])
  taken.bringBack('b')
  expect(ids()).toEqual(['a', 'c'])
})

it('brings each of several back to where it was', () => {
  const { taken, shown, ids } = threeLines()
  taken.takeOut('a')
  taken.takeOut('b')
  expect(shown()).toEqual(['(a)', '(b)', 'c'])
  taken.bringBack('b')
  expect(ids()).toEqual(['b', 'c'])
  taken.bringBack('a')
  expect(ids()).toEqual(['a', 'b', 'c'])
})
