import { expect, test } from 'vitest'
import { clockStartsAgain } from './clock-starts-again.ts'
import { rule, said } from './testing/looking.ts'

test('only the minimum stop starts again', () => {
  const clock = (clock: 'stopMinimum' | 'driving', does: 'startsAgain' | 'holds') =>
    said(clockStartsAgain, [rule('clockPolicy', { clock, under: 'trackCall', does })])
  expect(clock('stopMinimum', 'startsAgain')).toEqual([])
  expect(clock('driving', 'holds')).toEqual([])
  expect(clock('driving', 'startsAgain')).toHaveLength(1)
  expect(clock('driving', 'startsAgain')[0]).toContain('cannot start again. Only the minimum stop')
})
