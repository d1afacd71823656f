import { expect, test } from 'vitest'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, policy, smallMeeting } from '../testing/small-meeting.ts'
import { faultClocks } from './fault-clocks.ts'

const minutes = (ms: number) => ms / MINUTE

test('running with a fault counts while a segment runs, its repair whenever hands are on it', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const fault = pressing.press(GREEN + 15 * MINUTE, 'faultNoted.1', { fault: 'Braid' })
  pressing.press(GREEN + 18 * MINUTE, 'repairStarted.1', { fault })
  pressing.press(GREEN + 19 * MINUTE, 'repairPaused.1', { fault })
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  pressing.press(GREEN + 22 * MINUTE, 'repairStarted.1', { fault })
  const [clock] = faultClocks(pressing.state(), GREEN + 25 * MINUTE)
  expect(clock).toMatchObject({
    // 15 to 20.
    runningWithMs: 5 * MINUTE,
    // 18 to 19, and 22 to 25.
    repairMs: 4 * MINUTE,
    repairing: true,
  })
})

test('it holds under a track call only where the repair limit does', () => {
  const runningWith = (does: 'runs' | 'holds') => {
    const pressing = smallMeeting({ rules: [policy('repairLimit', does)] })
    pressing.press(GREEN, 'green.1', { segment: 'one' })
    pressing.press(GREEN + MINUTE, 'faultNoted.1', { fault: 'Braid' })
    pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
    return minutes(faultClocks(pressing.state(), GREEN + 6 * MINUTE)[0]?.runningWithMs ?? 0)
  }
  expect([runningWith('runs'), runningWith('holds')]).toEqual([5, 2])
})

test('open faults come first, oldest first; then ended ones, latest first', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const noted = ['a', 'b', 'c', 'd'].map((fault, place) =>
    pressing.press(GREEN + place * MINUTE, 'faultNoted.1', { fault }),
  )
  pressing.press(GREEN + 5 * MINUTE, 'repairFinished.1', { fault: noted[0] ?? '' })
  pressing.press(GREEN + 6 * MINUTE, 'faultLeft.1', { fault: noted[2] ?? '' })
  const names = faultClocks(pressing.state(), GREEN + 7 * MINUTE).map(({ fault }) => fault.fault)
  expect(names).toEqual(['b', 'd', 'c', 'a'])
})
