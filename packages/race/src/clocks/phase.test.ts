import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { GREEN, Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, regulations, smallMeeting } from '../testing/small-meeting.ts'
import { handsOnCar } from './hands-on-car.ts'
import { phaseOf } from './phase.ts'

const work = (during: 'green' | 'trackCall' | 'break' | 'parcFerme', value: object = {}): Rule => ({
  ...{ id: `work-${during}`, kind: 'workAllowed', clause: `§ ${during}` },
  value: { during, allowed: true, ...value },
})

test('a meeting goes from before the start to finished', () => {
  const pressing = smallMeeting()
  const phases = () => phaseOf(pressing.state()).phase
  expect(phases()).toBe('beforeStart')
  expect(phaseOf(pressing.state()).next).toMatchObject({ index: 0, of: 2 })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(phases()).toBe('green')
  pressing.press(GREEN + MINUTE, 'redFlag.1', {})
  expect(phaseOf(pressing.state())).toMatchObject({ phase: 'powerOff', cause: 'redFlag' })
  pressing.press(GREEN + 2 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(phaseOf(pressing.state())).toMatchObject({ phase: 'between', between: 'break' })
  pressing.press(GREEN + 3 * MINUTE, 'green.1', { segment: 'two' })
  pressing.press(GREEN + 4 * MINUTE, 'segmentEnd.1', { segment: 'two' })
  expect(phases()).toBe('finished')
})

test('a lane change after the segment is one', () => {
  const pressing = new Pressing()
  const [one, , two] = regulations().programme
  if (!one || !two) throw new Error('The programme has three items.')
  const programme = [one, { id: 'lanes', kind: 'laneChange' }, two]
  adopt(pressing, { document: 'rules', content: { ...regulations(), programme } })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(phaseOf(pressing.state())).toMatchObject({ phase: 'between', between: 'laneChange' })
})

test('a car is in until it leaves', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const stop = pressing.press(GREEN + MINUTE, 'stopIn.1', { moment: 'pitEntry' })
  expect(phaseOf(pressing.state()).carIn?.entry).toBe(stop)
  pressing.press(GREEN + 2 * MINUTE, 'stopOut.1', { moment: 'pitExit' })
  expect(phaseOf(pressing.state()).carIn).toBeUndefined()
})

test('whether hands may touch the car is asked of the rule for the phase', () => {
  const rules = [
    work('green'),
    work('trackCall', { allowed: false }),
    work('break', { allowed: 'notKnownYet' }),
    work('parcFerme', { allowed: false, costLaps: 8 }),
  ]
  const pressing = smallMeeting({ rules })
  const hands = () => handsOnCar(pressing.state(), GREEN + 9 * MINUTE)
  expect(hands()).toEqual({ allowed: true, assumed: true })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(hands()).toEqual({ allowed: true, clause: '§ green' })
  pressing.press(GREEN + MINUTE, 'trackCall.1', {})
  expect(hands()).toEqual({ allowed: false, clause: '§ trackCall' })
  pressing.press(GREEN + 2 * MINUTE, 'redFlag.1', {})
  expect(hands()).toEqual({ allowed: 'notKnown' })
  pressing.press(GREEN + 3 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(hands()).toEqual({ allowed: 'notKnown', clause: '§ break' })
  pressing.press(GREEN + 4 * MINUTE, 'green.1', { segment: 'two' })
  pressing.press(GREEN + 5 * MINUTE, 'segmentEnd.1', { segment: 'two' })
  expect(hands()).toEqual({ allowed: false, costLaps: 8, clause: '§ parcFerme' })
  pressing.press(GREEN + 6 * MINUTE, 'released.1', {})
  expect(hands()).toEqual({ allowed: true, assumed: true })
})
