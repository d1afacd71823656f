import { expect, test } from 'vitest'
import { urgencyOf } from './urgency.ts'

test('a stint end is calm above five minutes, soon above one, then now', () => {
  // 5 min = 300 000 ms, 1 min = 60 000 ms; the edge belongs to the more pressing step.
  expect(urgencyOf('stintEnd', 300_001)).toBe('calm')
  expect(urgencyOf('stintEnd', 300_000)).toBe('soon')
  expect(urgencyOf('stintEnd', 60_001)).toBe('soon')
  expect(urgencyOf('stintEnd', 60_000)).toBe('now')
})

test('the minimum of a stop becomes soon at fifteen seconds and now at five', () => {
  expect(urgencyOf('stopGo', 15_001)).toBe('calm')
  expect(urgencyOf('stopGo', 15_000)).toBe('soon')
  expect(urgencyOf('stopGo', 5_000)).toBe('now')
})

test('what is overdue is now', () => {
  expect(urgencyOf('segmentEnd', -1)).toBe('now')
})

test('a call is soon until its answer is due, a reading of the clock never more than soon', () => {
  expect(urgencyOf('callUnanswered', 60_000)).toBe('soon')
  expect(urgencyOf('callUnanswered', 0)).toBe('now')
  expect(urgencyOf('readTheClock', -900_000)).toBe('soon')
})
