import { expect, test } from 'vitest'
import { doubtWords } from './doubt.ts'

test('a figure whose clock is set and runs needs no words', () => {
  expect(doubtWords({ standing: 'set', boundMs: 40, held: false })).toEqual([])
})

test('a bound is rounded up to the tenth it may be off', () => {
  // 210 ms is more than two tenths: three.
  expect(doubtWords({ standing: 'roughly', boundMs: 210, held: false })).toEqual(['± 0.3 s'])
})

test('standing still and not being sure are both said', () => {
  expect(doubtWords({ standing: 'notSure', boundMs: 900, held: true })).toEqual([
    'standing',
    'not sure',
  ])
})
