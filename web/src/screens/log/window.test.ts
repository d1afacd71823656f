import { expect, it } from 'vitest'
import { windowOf } from './window.ts'

it('draws what is in sight and eight rows around it', () => {
  // Rows of 70 px, 7,000 px scrolled: row 100 is the first in sight; 700 px of screen end with row 110.
  expect(windowOf(20_000, 70, { scrolledPx: 7_000, heightPx: 700 })).toEqual({
    from: 92,
    to: 118,
    abovePx: 6_440, // 92 × 70
    belowPx: 1_391_740, // (20,000 − 118) × 70
  })
})

it('draws a short list whole', () => {
  expect(windowOf(3, 70, { scrolledPx: -200, heightPx: 700 })).toEqual({
    from: 0,
    to: 3,
    abovePx: 0,
    belowPx: 0,
  })
})

it('stays within a list that became shorter than what was scrolled', () => {
  const { from, to } = windowOf(5, 70, { scrolledPx: 90_000, heightPx: 700 })
  expect([from, to]).toEqual([5, 5])
})
