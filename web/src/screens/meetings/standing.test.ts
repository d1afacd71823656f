import { emptyState, type State } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { firstScreen, standingOf } from './standing.ts'

const RUN = {
  entry: 'g1',
  segment: 's1',
  length: { by: 'time', lengthMs: 60_000 },
  greenAt: 1_000,
  knots: [{ at: 1_000, clockMs: 0, rate: 1, boundMs: 0 }],
} as const
const running: State = {
  ...emptyState,
  raceControl: { ...emptyState.raceControl, runs: [RUN] },
}

it('calls a meeting next until it was given green', () => {
  expect(standingOf(emptyState)).toEqual({ group: 'next', words: 'not begun' })
  expect(standingOf(running).group).toBe('running')
})

it('leads everybody where they are needed', () => {
  expect(firstScreen('captain', 'next')).toBe('rules')
  expect(firstScreen('crew', 'running')).toBe('driver')
  expect(firstScreen('pitWall', 'running')).toBe('wall')
  expect(firstScreen('viewer', 'done')).toBe('log')
})
