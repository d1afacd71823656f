/** What is made at random is what there is. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { RULE_MAP } from '../../server/src/work/mapping/rule-map.ts'
import { meetings, SIZES } from './meeting.ts'

const made = fc.sample(meetings(SIZES['12 × 4']), { numRuns: 500 })

it('has every kind of rule the planner knows', () => {
  const kinds = new Set<string>(
    made.flatMap(({ given }) => given.rules ?? []).map(({ kind }) => kind),
  )
  const planned = Object.entries(RULE_MAP).filter(([, mapping]) => 'rules' in mapping)
  expect(planned.map(([kind]) => kind).filter((kind) => !kinds.has(kind))).toEqual([])
})

it('has every kind of wish, stops given and to be chosen, lines kept, people who come late', () => {
  const people = made.flatMap(({ given }) => given.people)
  const wishes = new Set(people.flatMap(({ wishList = [] }) => wishList).map(({ kind }) => kind))
  expect([...wishes].sort()).toEqual([
    'after',
    'before',
    'beside',
    'noMoreThan',
    'notAtEnd',
    'notBetween',
  ])
  expect(people.some(({ restBlock }) => restBlock)).toBe(true)
  expect(people.some(({ there }) => there)).toBe(true)
  expect(made.some(({ asked }) => asked.stopEveryMs)).toBe(true)
  expect(made.some(({ asked }) => asked.changeEveryMs)).toBe(true)
  const pinned = made.flatMap(({ given }) => [...(given.spans ?? []), ...(given.stops ?? [])])
  expect(pinned.length).toBeGreaterThan(0)
  expect(made.some(({ given }) => given.lanes?.includes('sitOut'))).toBe(true)
})
