import { expect, test } from 'vitest'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, policy, smallMeeting } from '../testing/small-meeting.ts'
import { lapping, lapsNow } from './lapping.ts'

test('the car laps while a segment runs with the power on and it is out', () => {
  // The race clock runs on under calls: the car stands all the same.
  const pressing = smallMeeting({ rules: [policy('segment', 'runs')] })
  const stretches = (to: number) =>
    lapping(pressing.state(), { fromAt: GREEN - MINUTE, toAt: GREEN + to * MINUTE }).map(
      ({ fromAt, toAt }) => [(fromAt - GREEN) / MINUTE, (toAt - GREEN) / MINUTE],
    )
  const laps = () => lapsNow(pressing.state())
  expect([stretches(1), laps()]).toEqual([[], false])
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect([stretches(1), laps()]).toEqual([[[0, 1]], true])
  pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
  expect([stretches(3), laps()]).toEqual([[[0, 2]], false])
  // In at 3, the power on at 4, out at 6.
  pressing.press(GREEN + 3 * MINUTE, 'stopIn.1', { moment: 'pitEntry' })
  pressing.press(GREEN + 4 * MINUTE, 'powerOn.1', {})
  expect([stretches(5), laps()]).toEqual([[[0, 2]], false])
  pressing.press(GREEN + 6 * MINUTE, 'stopOut.1', { moment: 'pitExit' })
  pressing.press(GREEN + 9 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  const all = [
    [0, 2],
    [6, 9],
  ]
  expect([stretches(20), laps()]).toEqual([all, false])
})
