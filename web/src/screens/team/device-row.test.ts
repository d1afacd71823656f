import { emptyState } from '@pitlamp/race'
import { expect, it } from 'vitest'
import type { Device, DeviceReport } from '@pitlamp/contract'
import { deviceRow } from './device-row.ts'

const phone: Device = { id: 'phone', name: 'Ida’s phone', role: 'crew', joinedAt: 0 }
const from = { id: 'm1', device: 'tablet', screens: [], state: emptyState, now: 0, askedAt: 0 }
const here = (report?: DeviceReport) => ({
  ...from,
  screens: [{ device: 'phone', name: 'Ida’s phone', role: 'crew' as const, report }],
})
const clock = { standing: 'set', boundMs: 50 } as const

it('says when a device was seen, by the server’s clock', () => {
  expect(deviceRow(phone, from).seen).toBe('not seen yet')
  expect(deviceRow({ ...phone, seenAt: 5_000 }, { ...from, askedAt: 245_000 }).seen).toBe(
    'seen 4 min ago',
  )
  expect(deviceRow({ ...phone, seenAt: 5_000 }, here()).seen).toBe('here now')
  expect(deviceRow(phone, { ...from, device: 'phone' }).seen).toBe('this device')
})

it('says how a device stands that is here, and nothing of one that is away', () => {
  const check = { sound: 'heard', awake: 'held', at: 0 } as const
  const battery = { charging: true, percent: 85 }
  const row = deviceRow(phone, here({ clock, battery, check }))
  expect(row.standing).toEqual(['charging, 85 %', 'clock set'])
  expect(row.ready).toBe('ready')
  expect(deviceRow(phone, here({ clock })).ready).toBe('not checked yet')
  expect(deviceRow(phone, here({ clock, check })).ready).toBe('not ready: charger not known')
  expect(deviceRow(phone, here()).ready).toBe('has not said how it stands')
  expect(deviceRow(phone, from)).not.toHaveProperty('ready')
})

it('offers the wall to crew only, meeting by meeting', () => {
  const wall = (more: Partial<Device>) => deviceRow({ ...phone, ...more }, from).wall
  expect(wall({})).toBe('mayNot')
  expect(wall({ wall: { meeting: 'm2' } })).toBe('mayNot')
  expect(wall({ wall: { meeting: 'm1' } })).toBe('may')
  expect(wall({ wall: { meeting: 'm1', takenAt: 7 } })).toBe('has')
  expect(wall({ role: 'viewer', wall: { meeting: 'm1' } })).toBeUndefined()
})
