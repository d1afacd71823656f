import { expect, test } from 'vitest'
import { DEVICES, id, PEOPLE } from '../../testing/ids.ts'
import { GREEN, problemKinds } from '../../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../../testing/small-meeting.ts'

test('a call is answered, and a later answer takes the place of an earlier one', () => {
  const pressing = smallMeeting()
  const call = pressing.press(GREEN, 'call.1', { person: PEOPLE.Solveig, words: 'Come in' })
  const onPhone = { device: DEVICES.phone }
  pressing.by(onPhone).press(GREEN + 1, 'answer.1', { call, answer: 'heard' })
  const coming = pressing.by(onPhone).press(GREEN + 2, 'answer.1', { call, answer: 'coming' })
  expect(pressing.state().people.calls).toEqual([
    {
      ...{ entry: call, at: GREEN, by: DEVICES.wall },
      body: { person: PEOPLE.Solveig, words: 'Come in' },
      answer: { entry: coming, at: GREEN + 2, answer: 'coming' },
    },
  ])
})

test('L5: an answer to nothing is listed', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'answer.1', { call: id(99), answer: 'heard' })
  expect(problemKinds(pressing.state())).toEqual(['outOfPlace'])
})

test('of a person’s availability the last word counts', () => {
  const pressing = smallMeeting()
  const person = PEOPLE.Imre
  pressing.press(GREEN, 'availability.1', { person, state: 'away', until: GREEN + MINUTE })
  const here = pressing.press(GREEN + MINUTE, 'availability.1', { person, state: 'here' })
  expect(pressing.state().people.availability).toEqual({
    [person]: { entry: here, at: GREEN + MINUTE, state: 'here' },
  })
})
