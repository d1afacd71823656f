import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { between } from './between.ts'
import { handsOnCar } from './hands-on-car.ts'

const ENDED = GREEN + 20 * MINUTE
const NOW = GREEN + 25 * MINUTE

function work(
  during: 'break' | 'laneChange' | 'parcFerme',
  allowed: boolean,
  costLaps?: number,
): Rule {
  const cost = costLaps === undefined ? {} : { costLaps }
  return { id: during, kind: 'workAllowed', value: { during, allowed, ...cost } }
}

function over(rules: readonly Rule[] = [], kind: 'break' | 'laneChange' = 'break'): Pressing {
  const pressing = smallMeeting({ rules, between: kind })
  const betweenWork = ['Weigh', 'New rear tyres', 'Braid']
  adopt(pressing, { document: 'car', content: { name: 'Seven', faultTiles: [], betweenWork } })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + MINUTE, 'workTicked.1', { work: 'Weigh', done: true })
  pressing.press(GREEN + MINUTE, 'measured.1', measured(189_000))
  pressing.press(ENDED, 'segmentEnd.1', { segment: 'one' })
  return pressing
}

function measured(valueMilli: number, quantity = 'Weight') {
  return { quantity, unit: 'g', valueMilli } as const
}

test('only between two segments', () => {
  const pressing = over()
  expect(between(smallMeeting().state(), GREEN - MINUTE)).toBeUndefined()
  pressing.press(GREEN + 30 * MINUTE, 'green.1', { segment: 'two' })
  expect(between(pressing.state(), GREEN + 31 * MINUTE)).toBeUndefined()
  pressing.press(GREEN + 50 * MINUTE, 'segmentEnd.1', { segment: 'two' })
  expect(between(pressing.state(), GREEN + 51 * MINUTE)).toBeUndefined()
})

test('it is a lane change, a break, or parc fermé where the rules speak of that alone', () => {
  const kind = (rules: readonly Rule[], programme?: 'break' | 'laneChange') => {
    const found = between(over(rules, programme).state(), NOW)
    return [found?.kind, found?.hands.allowed]
  }
  expect(kind([])).toEqual(['break', 'notKnown'])
  expect(kind([work('parcFerme', false)])).toEqual(['parcFerme', false])
  expect(kind([work('parcFerme', false), work('break', true)])).toEqual(['break', true])
  expect(kind([work('parcFerme', false)], 'laneChange')).toEqual(['laneChange', 'notKnown'])
})

test('whether hands may touch the car, and what it costs, is said as elsewhere', () => {
  const state = over([work('laneChange', true, 8)], 'laneChange').state()
  expect(between(state, NOW)).toMatchObject({
    ...{ kind: 'laneChange', since: ENDED, nextAt: GREEN + 30 * MINUTE },
    hands: { allowed: true, costLaps: 8 },
  })
  expect(handsOnCar(state, NOW)).toEqual({ allowed: true, costLaps: 8 })
})

test('the car’s list is done in its order, ticked since the segment ended', () => {
  const pressing = over()
  expect(between(pressing.state(), NOW)?.nextWork).toBe('Weigh')
  pressing.press(ENDED + MINUTE, 'workTicked.1', { work: 'weigh', done: true })
  pressing.press(ENDED + 2 * MINUTE, 'workTicked.1', { work: 'Braid', done: true })
  pressing.press(ENDED + 3 * MINUTE, 'workTicked.1', { work: 'Braid', done: false })
  expect(between(pressing.state(), NOW)).toMatchObject({
    nextWork: 'New rear tyres',
    work: [
      { work: 'Weigh', done: true, at: ENDED + MINUTE },
      { work: 'New rear tyres', done: false },
      { work: 'Braid', done: false, at: ENDED + 3 * MINUTE },
    ],
  })
})

test('the last of each measurement, and what the rules allow of tyres and parts', () => {
  const sets: Rule = {
    id: 'sets',
    kind: 'allowance',
    value: { of: 'tyreSets', count: 3, when: 'freely' },
  }
  const pressing = over([sets])
  pressing.press(ENDED + MINUTE, 'measured.1', measured(60_000, 'Body'))
  pressing.press(ENDED + MINUTE, 'measured.1', measured(190_000, 'weight'))
  const found = between(pressing.state(), NOW)
  expect(found?.measurements.map(({ body }) => [body.quantity, body.valueMilli])).toEqual([
    ['Body', 60_000],
    ['weight', 190_000],
  ])
  expect(found?.allowances).toMatchObject([{ of: 'tyreSets', left: 2 }])
})
