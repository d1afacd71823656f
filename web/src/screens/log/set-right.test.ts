import type { LogLine, ReadEntry } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { moved, splitOff } from './set-right.ts'

const entry: ReadEntry = {
  id: '018f3a50-6a00-7000-8000-000000000e01',
  device: '018f3a50-6a00-7000-8000-0000000000d1',
  n: 1,
  at: 5_000,
  atBoundMs: 0,
  epoch: 1,
  kind: 'faultNoted.1',
  body: { fault: 'Tyre' },
}
const line = (more: Partial<LogLine>): LogLine => ({
  entry,
  at: 5_000,
  standing: 'holds',
  basedOn: entry.id,
  ...more,
})

it('moves a press and leaves its content to the press', () => {
  expect(moved(line({}), 4_000)).toEqual({ what: 'replace', at: 4_000 })
})

it('carries on what was set right before when a press is moved', () => {
  const corrected = { ...entry, body: { fault: 'Braid' } }
  expect(moved(line({ corrected }), 4_000)).toEqual({
    what: 'replace',
    at: 4_000,
    body: { fault: 'Braid' },
  })
})

it('splits a witness off where it stands', () => {
  expect(splitOff(line({ at: 4_500 }))).toEqual({ what: 'replace', apart: true, at: 4_500 })
})
