import { deviceReportSchema } from '@pitlamp/contract'
import { expect, it, vi } from 'vitest'
import { batteryShown } from './battery.svelte.ts'
import { deviceChecks } from './device-check.svelte.ts'
import { coarsely, deviceReport } from './device-report.ts'

const meeting = '018f3a50-6a00-7000-8000-000000000001'
const other = '018f3a50-6a00-7000-8000-000000000002'

/** As a browser's, which this environment lacks. */
const stored = new Map<string, string>()
vi.stubGlobal('localStorage', {
  getItem: (key: string) => stored.get(key) ?? null,
  setItem: (key: string, value: string) => stored.set(key, value),
})

it('says the clock coarsely, so that not every probe is news', () => {
  expect([0, 1, 50, 51, 500, 501, 1_000, Infinity].map(coarsely)).toEqual([
    0, 50, 50, 100, 500, 1_000, 1_000, 86_400_000,
  ])
})

it('says a battery in steps of five percent', () => {
  const levels = [0, 0.024, 0.026, 0.83, 1]
  expect(levels.map((level) => batteryShown({ charging: true, level }).percent)).toEqual([
    0, 0, 5, 85, 100,
  ])
})

it('carries what was checked for this meeting, and not for another', () => {
  const clock = { standing: 'set', boundMs: 7 } as const
  deviceChecks.note(meeting, { sound: 'heard' }, 1_000)
  deviceChecks.note(meeting, { awake: 'held' }, 2_000)
  const report = deviceReport({ meeting, person: undefined, clock })
  expect(report).toEqual({
    clock: { standing: 'set', boundMs: 50 },
    check: { sound: 'heard', awake: 'held', at: 2_000 },
  })
  expect(deviceReportSchema.parse(report)).toEqual(report)
  expect(deviceReport({ meeting: other, person: undefined, clock }).check).toBeUndefined()
  expect(JSON.parse(stored.get(`pitlamp.check.${meeting}`) ?? '')).toEqual(report.check)
})

it('takes what is kept and broken for nothing', () => {
  const broken = '018f3a50-6a00-7000-8000-000000000003'
  stored.set(`pitlamp.check.${broken}`, '{"sound":"perhaps","at":1}')
  expect(deviceChecks.of(broken)).toBeUndefined()
})
