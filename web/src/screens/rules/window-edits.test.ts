import { expect, it } from 'vitest'
import { freshWindow } from './window-edits.ts'

const MINUTE_MS = 60_000
const segments = [
  ['s1', 'Segment 1'],
  ['s2', 'Segment 2'],
] as const

it('proposes the middle half of the segment that has fewest windows', () => {
  const first = freshWindow([], segments, () => 40 * MINUTE_MS)
  // A quarter of 40 min is 10 min.
  expect(first).toEqual({ id: 'w1', segment: 's1', fromMs: 600_000, toMs: 1_800_000 })
  const second = freshWindow(first ? [first] : [], segments, () => undefined)
  // A segment in laps is taken for an hour: a quarter is 15 min.
  expect(second).toEqual({ id: 'w2', segment: 's2', fromMs: 900_000, toMs: 2_700_000 })
})

it('proposes none where there is no segment', () => {
  expect(freshWindow([], [], () => undefined)).toBeUndefined()
})
