import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
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

function work(during: 'trackCall' | 'laneChange' | 'break' | 'parcFerme', allowed = false): Rule {
  return { id: `work-${during}`, kind: 'workAllowed', value: { during, allowed } }
}

/** Mending begins at 2:00, the power is off from 3:00 to 5:00, the segment ends at 6:00. */
function mending(rules: readonly Rule[], between: 'break' | 'laneChange' = 'break') {
  const pressing = smallMeeting({ rules, between })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const fault = pressing.press(GREEN + MINUTE, 'faultNoted.1', { fault: 'Braid' })
  pressing.press(GREEN + 2 * MINUTE, 'repairStarted.1', { fault })
  pressing.press(GREEN + 3 * MINUTE, 'trackCall.1', {})
  const during = pressing.state()
  pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
  pressing.press(GREEN + 6 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  return { pressing, fault, during }
}

test('L38: a repair does not count under a call that keeps hands off, and says by what it is paused', () => {
  const asked = (rules: readonly Rule[]) => {
    const [clock] = faultClocks(mending(rules).during, GREEN + 4 * MINUTE)
    return clock && [minutes(clock.repairMs), clock.repairing, clock.paused]
  }
  // 2 to 4, of which 3 to 4 without hands.
  expect(asked([work('trackCall')])).toEqual([1, true, 'byRule'])
  expect(asked([work('trackCall', true)])).toEqual([2, true, undefined])
  expect(asked([])).toEqual([2, true, undefined])
})

test('L38: nor in a lane change, a break or parc fermé that does, nor after the flag until the release', () => {
  const repairAt8 = (rules: readonly Rule[], between?: 'break' | 'laneChange') => {
    const { pressing } = mending(rules, between)
    const [clock] = faultClocks(pressing.state(), GREEN + 8 * MINUTE)
    return clock && [minutes(clock.repairMs), clock.paused]
  }
  // 2 to 8, of which 6 to 8 between the segments.
  expect(repairAt8([work('break')])).toEqual([4, 'byRule'])
  expect(repairAt8([work('parcFerme')])).toEqual([4, 'byRule'])
  expect(repairAt8([work('break', true), work('parcFerme')])).toEqual([6, undefined])
  expect(repairAt8([work('laneChange')], 'laneChange')).toEqual([4, 'byRule'])
  expect(repairAt8([work('break')], 'laneChange')).toEqual([6, undefined])
  const { pressing } = mending([work('parcFerme'), work('break', true)])
  pressing.press(GREEN + 10 * MINUTE, 'green.1', { segment: 'two' })
  pressing.press(GREEN + 12 * MINUTE, 'segmentEnd.1', { segment: 'two' })
  pressing.press(GREEN + 15 * MINUTE, 'released.1', {})
  // 2 to 20, of which 12 to 15 until the release.
  expect(faultClocks(pressing.state(), GREEN + 20 * MINUTE)[0]?.repairMs).toBe(15 * MINUTE)
})

test('paused by hand until it goes on, and not at all once it has ended', () => {
  const { pressing, fault } = mending([work('trackCall')])
  const paused = () => faultClocks(pressing.state(), GREEN + 9 * MINUTE)[0]?.paused
  pressing.press(GREEN + 7 * MINUTE, 'repairPaused.1', { fault })
  expect(paused()).toBe('byHand')
  pressing.press(GREEN + 8 * MINUTE, 'repairFinished.1', { fault })
  expect(paused()).toBeUndefined()
})
