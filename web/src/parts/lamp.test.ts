import { expect, test } from 'vitest'
import { lampOf } from './lamp.ts'

test('the most urgent thing has the lamp', () => {
  expect(
    lampOf([
      { part: 'stint', urgency: 'soon', dueAt: 10 },
      { part: 'window', urgency: 'now', dueAt: 90 },
      { part: 'segment', urgency: 'calm', dueAt: 5 },
    ]),
  ).toBe('window')
})

test('of two equally urgent things the one due first has it', () => {
  expect(
    lampOf([
      { part: 'stint', urgency: 'soon', dueAt: 60 },
      { part: 'stop', urgency: 'soon', dueAt: 50 },
    ]),
  ).toBe('stop')
})

test('a fault that waits for a hand has it only while every countdown is calm', () => {
  const fault = { part: 'fault', urgency: 'calm', dueAt: 1, waiting: true } as const
  expect(lampOf([{ part: 'stint', urgency: 'calm', dueAt: 0 }, fault])).toBe('fault')
  expect(lampOf([{ part: 'stint', urgency: 'soon', dueAt: 900 }, fault])).toBe('stint')
})

test('nothing has it while all is calm', () => {
  expect(lampOf([{ part: 'stint', urgency: 'calm', dueAt: 0 }])).toBeUndefined()
  expect(lampOf([])).toBeUndefined()
})
