import { expect, it } from 'vitest'
import { spoken } from './spoken.ts'

it('speaks the label and how long there is', () => {
  const label = 'Mandatory stop'
  expect(
    [600_000, 60_000, 10_000, 0, undefined].map((thresholdMs) => spoken({ label, thresholdMs })),
  ).toEqual([
    'Mandatory stop in 10 minutes',
    'Mandatory stop in 1 minute',
    'Mandatory stop in 10 seconds',
    'Mandatory stop, now',
    'Mandatory stop',
  ])
})
