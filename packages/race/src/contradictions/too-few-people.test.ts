import { expect, test } from 'vitest'
import { crewOf, rule, said, segment } from './testing/looking.ts'
import { tooFewPeople } from './too-few-people.ts'

const owed = (count: number) => rule('marshalsOwed', { count, when: 'wholeRace' })

test('the driver and the marshals owed are people of the crew', () => {
  expect(said(tooFewPeople, [owed(2)], { people: crewOf(3) })).toEqual([])
  expect(said(tooFewPeople, [owed(2)], { people: crewOf(2) })).toEqual([
    'The team owes 2 marshals while somebody drives. That takes 3 people at once, and the crew has 2.',
  ])
  const both = rule('marshalWhileDriving', { allowed: true })
  expect(said(tooFewPeople, [owed(2), both], { people: crewOf(2) })).toEqual([])
  expect(said(tooFewPeople, [owed(3), both], { people: crewOf(2) })).toEqual([
    'The team owes 3 marshals. In the crew 2 people may marshal.',
  ])
})

test('as many may drive as must', () => {
  const must = [rule('numberOfDrivers', { atLeast: 2 })]
  expect(said(tooFewPeople, must, { people: crewOf(2) })).toEqual([])
  const people = { Ana: {}, Ben: { duties: ['post' as const] } }
  expect(said(tooFewPeople, must, { people })).toEqual([
    '2 drivers must drive. In the crew there is one person who may.',
  ])
  expect(said(tooFewPeople, must)).toEqual([])
})

test('a rule may keep everybody from the controller', () => {
  const kept = rule('mayNotDo', { who: 'captain', duty: 'controller' })
  expect(said(tooFewPeople, [kept], { people: { Ana: { categories: ['Captain'] } } })).toEqual([
    'Nobody in the crew may drive. The crew list or the rules keep everybody from the controller.',
  ])
})

test('a sit-out’s posts are manned by those who may marshal', () => {
  const programme = [segment('s1'), segment('s2', 60, { lane: 'sitOut' })]
  const duty = rule('sitOutDuty', { obliges: 'marshalSomePosts', posts: 3 })
  expect(said(tooFewPeople, [duty], { programme, people: crewOf(3) })).toEqual([])
  expect(said(tooFewPeople, [duty], { programme, people: crewOf(2) })).toEqual([
    'In a sit-out the team owes 3 marshals. In the crew 2 people may marshal.',
  ])
  expect(said(tooFewPeople, [duty], { people: crewOf(2) })).toEqual([])
})
