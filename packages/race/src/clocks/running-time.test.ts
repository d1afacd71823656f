import { expect, test } from 'vitest'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { runningTimes } from './running-time.ts'

function meeting(): Pressing {
  const pressing = smallMeeting()
  adopt(pressing, { document: 'car', content: { name: 'Seven', faultTiles: [] } })
  return pressing
}
const cars = (pressing: Pressing, now: number) =>
  runningTimes(pressing.state(), now).map(({ car, runningMs, isOnTrack }) => [
    ...[car, runningMs / MINUTE, isOnTrack],
  ])

test('L50: running time goes to the car entered until another is put in, and then to that', () => {
  const pressing = meeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 8 * MINUTE, 'carExchanged.1', { car: 'Spare' })
  expect(cars(pressing, GREEN + 11 * MINUTE)).toEqual([
    ['Seven', 8, false],
    ['Spare', 3, true],
  ])
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  pressing.press(GREEN + 25 * MINUTE, 'carExchanged.1', { car: 'seven' })
  pressing.press(GREEN + 30 * MINUTE, 'green.1', { segment: 'two' })
  // 8 + 5 and 12; the ten minutes of the break are nobody's.
  expect(cars(pressing, GREEN + 35 * MINUTE)).toEqual([
    ['Seven', 13, true],
    ['Spare', 12, false],
  ])
})

test('L50: power off and the car in do not run it', () => {
  const pressing = meeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
  pressing.press(GREEN + 3 * MINUTE, 'powerOn.1', {})
  pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 7 * MINUTE, 'stopOut.1', { moment: 'leaving' })
  // 10 − 1 − 2.
  expect(cars(pressing, GREEN + 10 * MINUTE)).toEqual([['Seven', 7, true]])
})

test('L50: what is fitted runs with its car, and stays on it', () => {
  const pressing = meeting()
  const put = (minute: number, part: string) =>
    pressing.press(GREEN + minute * MINUTE, 'partFitted.1', { position: 'Rear tyres', part })
  put(-5, 'Set A')
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  put(4, 'Set B')
  pressing.press(GREEN + 6 * MINUTE, 'carExchanged.1', { car: 'Spare' })
  put(7, 'Set A')
  pressing.press(GREEN + 9 * MINUTE, 'carExchanged.1', { car: 'Seven' })
  pressing.press(GREEN + 10 * MINUTE, 'partRemoved.1', { position: 'Rear tyres', part: 'Set B' })
  const [seven, spare] = runningTimes(pressing.state(), GREEN + 12 * MINUTE)
  const parts = (car: typeof seven) =>
    car?.parts.map(({ part, runningMs, isFitted }) => [part, runningMs / MINUTE, isFitted])
  // Seven: A for 4 min, B for 2 (4 to 6) and 1 (9 to 10); the spare's own set from 7 to 9.
  expect(parts(seven)).toEqual([
    ['Set A', 4, false],
    ['Set B', 3, false],
  ])
  expect(parts(spare)).toEqual([['Set A', 2, true]])
  expect([seven?.runningMs, spare?.runningMs]).toEqual([9 * MINUTE, 3 * MINUTE])
})
