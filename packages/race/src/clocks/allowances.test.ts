import { expect, test } from 'vitest'
import type { RuleValue } from '../rules/index.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { allowances } from './allowances.ts'

type Value = RuleValue<'allowance'>

/** Fitted before green at these positions, and since so many times; cars exchanged as often. */
function meeting(value: Partial<Value>, before: readonly string[], since: number) {
  const all: Value = { of: 'tyreSets', count: 3, when: 'freely', ...value }
  const pressing = smallMeeting({
    rules: [{ id: 'sets', kind: 'allowance', value: all, clause: '§ 5' }],
  })
  const putOn = (at: number, position: string) =>
    pressing.press(at, 'partFitted.1', { position, part: 'Tyres', allowance: all.of })
  for (const position of before) putOn(GREEN - MINUTE, position)
  pressing.press(GREEN - MINUTE, 'carExchanged.1', { car: 'Number 7' })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  for (let n = 1; n <= since; n += 1) {
    putOn(GREEN + n * MINUTE, 'Rear')
    pressing.press(GREEN + n * MINUTE, 'carExchanged.1', { car: `Number ${7 + n}` })
  }
  pressing.press(GREEN + MINUTE, 'partFitted.1', { position: 'Guide', part: 'Guide' })
  return allowances(pressing.state(), GREEN + 30 * MINUTE)
}

test('L41: those fitted at the start count, recorded or not, and each one since', () => {
  expect(meeting({}, [], 0)).toEqual([
    {
      ...{ rule: 'sets', clause: '§ 5', of: 'tyreSets', count: 3, used: 1, left: 2, beyond: 0 },
      ...{ nextCosts: { laps: 0 }, onlyOnFailure: false },
    },
  ])
  const used = (before: readonly string[], since: number) => meeting({}, before, since)[0]?.used
  // Twice at one position before green is still one set at the start.
  expect([used(['Rear'], 0), used(['Rear', 'rear'], 1), used(['Rear', 'Front'], 1)]).toEqual([
    1, 2, 3,
  ])
})

test('the next one costs what the rules say, or is not allowed', () => {
  const next = (value: Partial<Value>, since = 2) => meeting(value, [], since)[0]?.nextCosts
  expect(next({}, 1)).toEqual({ laps: 0 })
  expect(next({ costLaps: 5 })).toEqual({ laps: 5 })
  expect(next({})).toBe('notAllowed')
  expect(next({ costLaps: 'notKnownYet' })).toBe('notKnown')
})

test('beyond the count nothing is left, and it says by how many', () => {
  // One and four are five of three.
  expect(meeting({}, [], 4)[0]).toMatchObject({ used: 5, left: 0, beyond: 2 })
})

test('cars are those exchanged since green, and the one entered', () => {
  expect(meeting({ of: 'cars', count: 2 }, [], 1)[0]).toMatchObject({ used: 2, left: 0 })
})

test('what is not known yet is not guessed', () => {
  const value = { count: 'notKnownYet', when: 'notKnownYet', handling: 'marked' } as const
  expect(meeting(value, [], 1)).toEqual([
    {
      ...{ rule: 'sets', clause: '§ 5', of: 'tyreSets', used: 2, beyond: 0 },
      ...{ nextCosts: 'notKnown', onlyOnFailure: 'notKnown', handling: 'marked' },
    },
  ])
  expect(meeting({ when: 'onFailure' }, [], 0)[0]?.onlyOnFailure).toBe(true)
})
