import { expect, it } from 'vitest'
import { powerWords, readiness } from './readiness.ts'

const clock = { standing: 'set', boundMs: 50 } as const
const good = { sound: 'heard', awake: 'held', charger: 'plugged', at: 0 } as const

it('is ready with a tone heard, a screen that stays lit, a charger and a set clock', () => {
  expect(readiness({ clock, check: good })).toEqual({ ready: true, missing: [] })
})

it('names what was not tried', () => {
  expect(readiness({ clock }).missing).toEqual([
    'sound not tried',
    'staying lit not tried',
    'charger not known',
  ])
})

it('names what did not do', () => {
  const check = { sound: 'notHeard', awake: 'plainHttp', charger: 'notPlugged', at: 0 } as const
  expect(readiness({ clock: { standing: 'roughly', boundMs: 150 }, check }).missing).toEqual([
    'sound not heard',
    'the screen may go dark: the address is plain HTTP',
    'no charger',
    'clock to ± 0.2 s',
  ])
})

it('believes the battery more than what somebody said earlier', () => {
  const battery = { charging: false, percent: 60 }
  expect(readiness({ clock, check: good, battery }).missing).toEqual(['no charger'])
  expect(powerWords({ clock, check: good, battery })).toBe('on battery, 60 %')
  expect(powerWords({ clock, check: good })).toBe('on a charger')
  expect(powerWords({ clock })).toBeUndefined()
})
