import { expect, test } from 'vitest'
import { categoryOfNobody } from './category-of-nobody.ts'
import { rule, said } from './testing/looking.ts'

test('somebody is of the category a rule is about', () => {
  const novice = rule('endDriver', { which: 'first', who: 'novice', may: 'must' })
  expect(said(categoryOfNobody, [novice], { people: { Ana: { categories: ['Novice'] } } })).toEqual(
    [],
  )
  expect(said(categoryOfNobody, [novice])).toEqual([])
  expect(said(categoryOfNobody, [novice], { people: { Ana: {} } })).toEqual([
    'Nobody in the crew is called novice. First and last driver is about them. Give the category to somebody, or leave the rule out.',
  ])
})

test('a category that several rules are about is said once, with all of them', () => {
  const rules = [
    rule('endDriver', { which: 'first', who: 'novice', may: 'must' }),
    rule('mayNotDo', { who: 'Novice', duty: 'post' }),
    rule('mayNotDo', { who: 'novice', duty: 'wall' }),
  ]
  const people = { Ana: {} }
  expect(said(categoryOfNobody, rules, { people })).toEqual([
    'Nobody in the crew is called novice. First and last driver and Who may not are about them. Give the category to somebody, or leave the rules out.',
  ])
})

test('both categories of a pair are looked for, one only once, and whose hands may work is none', () => {
  const pair = (first: string, then: string) =>
    rule('followingDrivers', { first, must: 'mustNot', then })
  const people = { Ana: {} }
  expect(said(categoryOfNobody, [pair('novice', 'junior')], { people })).toHaveLength(2)
  expect(said(categoryOfNobody, [pair('novice', 'Novice')], { people })).toHaveLength(1)
  expect(said(categoryOfNobody, [rule('whoWorks', { who: 'crew' })], { people })).toEqual([])
})
