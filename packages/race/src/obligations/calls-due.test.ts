import { expect, test } from 'vitest'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { alertsBetween } from './alerts.ts'
import { obligations } from './obligations.ts'

const { Solveig, Imre } = PEOPLE

function running(): Pressing {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function find(pressing: Pressing, minute: number, kind: string) {
  return obligations(pressing.state(), GREEN + minute * MINUTE).find((one) => one.kind === kind)
}

test('a call is unanswered 20 s after it, until it is answered or another takes its place', () => {
  const pressing = running()
  const call = (second: number) =>
    pressing.press(GREEN + second * SECOND, 'call.1', { person: Solveig, words: 'Come in' })
  const first = call(60)
  const at = (second: number) => find(pressing, second / 60, 'callUnanswered')
  expect(at(61)).toMatchObject({
    ...{ id: `callUnanswered:${first}:1`, dueAt: GREEN + 80 * SECOND, concerns: [Solveig] },
    label: 'Solveig has not answered',
  })
  const second = call(100)
  expect(at(101)?.id).toBe(`callUnanswered:${second}:1`)
  pressing.press(GREEN + 110 * SECOND, 'answer.1', { call: second, answer: 'coming' })
  expect(at(120)).toBeUndefined()
})

test('L36: each repetition of a call has its own id, and sounds', () => {
  const pressing = running()
  const call = pressing.press(GREEN, 'call.1', { person: Solveig, words: 'Come in' })
  const state = pressing.state()
  // Looked at every five seconds for a minute, and a little longer: at 20, 40 and 60.
  const heard = [...Array(13).keys()].flatMap((step) => {
    const now = GREEN + step * 5 * SECOND
    const calls = obligations(state, now).filter((one) => one.kind === 'callUnanswered')
    return alertsBetween(calls, now - 5 * SECOND, now).map(({ id }) => id)
  })
  expect(heard).toEqual([1, 2, 3].map((which) => `callUnanswered:${call}:${which}@0`))
})

test('L36: a wake-up call is due when it is to wake', () => {
  const pressing = running()
  const dueAt = GREEN + 10 * MINUTE
  const call = pressing.press(GREEN, 'call.1', { person: Imre, words: 'Wake up', dueAt })
  expect(find(pressing, 9, 'callUnanswered')).toBeUndefined()
  expect(find(pressing, 9, 'callDue')).toMatchObject({
    ...{ id: `callDue:${call}`, dueAt, lengthMs: 10 * MINUTE, concerns: [Imre] },
    label: 'Wake up',
  })
  const unanswered = find(pressing, 10, 'callUnanswered')
  expect(unanswered).toMatchObject({ dueAt: dueAt + 20 * SECOND })
})
