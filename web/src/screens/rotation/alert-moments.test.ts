import { CAPTAINS_DEFAULTS } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { ALERT_MOMENTS, momentsOf, toggledMoments } from './alert-moments.ts'

it('begins with ten, five, two, one minute and now', () => {
  expect(momentsOf(CAPTAINS_DEFAULTS)).toEqual([600_000, 300_000, 120_000, 60_000, 0])
  expect(ALERT_MOMENTS.map(({ ms }) => ms)).toEqual([600_000, 300_000, 120_000, 60_000, 0])
})

it('takes a moment out and puts it back in its place', () => {
  const without = toggledMoments([600_000, 300_000, 120_000, 60_000, 0], 120_000)
  expect(without).toEqual([600_000, 300_000, 60_000, 0])
  // Back to what is usual: nothing needs saying then.
  expect(toggledMoments(without ?? [], 120_000)).toBeUndefined()
})

it('can be empty, and then the devices keep still', () => {
  expect(toggledMoments([0], 0)).toEqual([])
  expect(momentsOf({ ...CAPTAINS_DEFAULTS, alertsMs: [] })).toEqual([])
})
