import { expect, test } from 'vitest'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { callsNow, THE_WALL } from './calls-now.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE

function called(withPlan = plan): Pressing {
  const pressing = smallMeeting({ plan: withPlan })
  pressing.press(GREEN, 'call.1', { person: Okello, words: 'You are next' })
  return pressing
}

function at(pressing: Pressing, second: number) {
  const [call] = callsNow(pressing.state(), GREEN + second * SECOND)
  return call && [call.state, call.repetition, call.to, (call.nextAt - GREEN) / SECOND]
}

test('L36: unanswered it is repeated every 20 s and after each minute passes on, at last to the wall', () => {
  const pressing = called()
  // In the crew’s order after Okello: Tamsin, Imre, Solveig.
  expect([0, 19, 20, 59, 60, 120, 180, 240].map((second) => at(pressing, second))).toEqual([
    ['waiting', 0, Okello, 20],
    ['waiting', 0, Okello, 20],
    ['waiting', 1, Okello, 40],
    ['waiting', 2, Okello, 60],
    ['passedOn', 3, Tamsin, 80],
    ['passedOn', 6, Imre, 140],
    ['passedOn', 9, Solveig, 200],
    ['passedOn', 12, THE_WALL, 260],
  ])
})

test('L36: it passes to nobody who is away, unwell, late, or on duty', () => {
  const pressing = called()
  pressing.press(GREEN, 'availability.1', { person: Tamsin, state: 'unwell' })
  pressing.press(GREEN, 'dutyTaken.1', { person: Imre, duty: 'bench' })
  pressing.press(GREEN, 'availability.1', { person: Solveig, state: 'wantsRelief' })
  expect(at(pressing, 60)?.[2]).toBe(Solveig)
  pressing.press(GREEN, 'availability.1', { person: Solveig, state: 'away' })
  expect(at(pressing, 60)?.[2]).toBe(THE_WALL)
  pressing.press(GREEN, 'dutyTaken.1', { person: Imre, duty: 'offDuty' })
  expect(at(pressing, 60)?.[2]).toBe(Imre)
})

test('who is not there by the crew’s list is passed over, unless they said they are', () => {
  const pressing = called()
  const there = [{ id: 't', fromAt: GREEN + 120 * SECOND }]
  const people = [Okello, Tamsin, Imre].map((id) => ({ id, name: id, duties: [] }))
  const content = { people: people.map((one) => (one.id === Tamsin ? { ...one, there } : one)) }
  adopt(pressing, { document: 'crew', content, version: 2, at: GREEN - 1 })
  expect(at(pressing, 60)?.[2]).toBe(Imre)
  // From 2:00 on Tamsin is there, and was passed over by then: the second is Imre still.
  expect(at(pressing, 120)?.[2]).toBe(Imre)
  pressing.press(GREEN, 'availability.1', { person: Tamsin, state: 'here' })
  expect(at(pressing, 60)?.[2]).toBe(Tamsin)
})

test('the captain sets how often and how long', () => {
  const captain = { ...plan.captain, callRepeatMs: 10_000, callPassOnMs: 30_000 }
  const pressing = called({ ...plan, captain })
  expect(at(pressing, 30)).toEqual(['passedOn', 3, Tamsin, 40])
})

test('L36: a wake-up call is ahead until it is due, whatever else that person is called for', () => {
  const pressing = smallMeeting()
  const dueAt = GREEN + 10 * MINUTE
  const wake = pressing.press(GREEN, 'call.1', { person: Imre, words: 'Wake up', dueAt })
  const come = pressing.press(GREEN + MINUTE, 'call.1', { person: Imre, words: 'Come' })
  const standing = (minute: number) =>
    callsNow(pressing.state(), GREEN + minute * MINUTE).map(({ call, state }) => [
      call.entry,
      state,
    ])
  expect(standing(1)).toEqual([
    [wake, 'ahead'],
    [come, 'waiting'],
  ])
  // Once it is due it takes the other’s place.
  expect(standing(10)).toEqual([[wake, 'waiting']])
  pressing.press(dueAt + SECOND, 'answer.1', { call: wake, answer: 'heard' })
  expect(standing(11)).toEqual([])
})
