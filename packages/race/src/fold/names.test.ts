import { expect, test } from 'vitest'
import { id, PEOPLE } from '../testing/ids.ts'
import { Pressing } from '../testing/pressing.ts'
import { adopt, regulations, smallMeeting } from '../testing/small-meeting.ts'
import { moveLabel, personName, segmentName } from './names.ts'

test('people are called by their names in the crew', () => {
  const state = smallMeeting().state()
  expect(personName(state, PEOPLE.Imre)).toBe('Imre')
  expect(personName(state, id(99))).toBe('Somebody')
})

test('segments are called by the organiser’s name, or by number', () => {
  const pressing = new Pressing()
  const programme = regulations().programme.map((item) =>
    item.id === 'two' ? { ...item, name: 'Night' } : item,
  )
  adopt(pressing, { document: 'rules', content: { ...regulations(), programme } })
  const state = pressing.state()
  expect(['one', 'two', 'three'].map((segment) => segmentName(state, segment))).toEqual([
    'Segment 1',
    'Night',
    'A segment that is not in the programme',
  ])
})

test('moves are called out', () => {
  const state = smallMeeting().state()
  const person = PEOPLE.Okello
  const moves = [
    { person, duty: 'controller' },
    { person, duty: 'post', post: '4' },
    { person, duty: 'post' },
    { person, duty: 'wall' },
    { person, duty: 'bench' },
    { person, duty: 'offDuty' },
  ] as const
  expect(moves.map((move) => moveLabel(state, move))).toEqual([
    'Okello drives',
    'Okello to post 4',
    'Okello marshals',
    'Okello to the wall',
    'Okello to the bench',
    'Okello off duty',
  ])
})
