import { expect, test } from 'vitest'
import { GREEN } from '../testing/pressing.ts'
import { policy, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { counted } from './held.ts'

/** From 0 to 100 s with calls from 20 to 30 and from 60 to 70. */
function asCounted(does: 'runs' | 'holds' | 'startsAgain', from: number, to: number) {
  const pressing = smallMeeting({ rules: [policy('stopMinimum', does)] })
  pressing.press(GREEN - 100 * SECOND, 'green.1', { segment: 'one' })
  for (const second of [20, 60]) {
    pressing.press(GREEN + second * SECOND, 'trackCall.1', {})
    pressing.press(GREEN + (second + 10) * SECOND, 'powerOn.1', {})
  }
  const stretch = { from: GREEN + from * SECOND, to: GREEN + to * SECOND }
  const found = counted(pressing.state(), 'stopMinimum', stretch)
  return [(found.since - GREEN) / SECOND, found.countedMs / SECOND, found.waits, found.again]
}

test('a stretch counts whole, without what it held, or from when it last started again', () => {
  expect(asCounted('runs', 0, 100)).toEqual([0, 100, false, false])
  expect(asCounted('holds', 0, 100)).toEqual([0, 80, false, false])
  expect(asCounted('startsAgain', 0, 100)).toEqual([70, 30, false, true])
  expect(asCounted('startsAgain', 0, 50)).toEqual([30, 20, false, true])
})

test('L39: what ends within an interruption counts nothing', () => {
  expect(asCounted('startsAgain', 0, 65)).toEqual([65, 0, true, true])
  expect(asCounted('startsAgain', 62, 75)).toEqual([70, 5, false, true])
})

test('an interruption that was over before it, or began as it ended, does not touch it', () => {
  expect(asCounted('startsAgain', 30, 60)).toEqual([30, 30, false, false])
})
