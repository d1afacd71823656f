import type { CrewMember } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { addWish, changeWish, takeWish } from './wish-edits.ts'

const person = (): CrewMember => ({ id: 'a', name: 'Solveig', duties: [] })
const about = { others: ['b'], startAt: 1_000 }

it('wishes are added, changed and taken out', () => {
  const solveig = person()
  addWish(solveig, 'notAtEnd', about)
  addWish(solveig, 'notBetween', about)
  expect(solveig.wishList).toEqual([
    { id: 'w1', kind: 'notAtEnd', which: 'first' },
    // An hour to begin with.
    { id: 'w2', kind: 'notBetween', fromAt: 1_000, toAt: 3_601_000 },
  ])
  changeWish(solveig, { id: 'w1', kind: 'notAtEnd', which: 'last' })
  takeWish(solveig, 'w2')
  expect(solveig.wishList).toEqual([{ id: 'w1', kind: 'notAtEnd', which: 'last' }])
  takeWish(solveig, 'w1')
  expect(solveig.wishList).toBeUndefined()
})

it('a wish about somebody needs somebody', () => {
  const solveig = person()
  addWish(solveig, 'after', { others: [], startAt: 0 })
  expect(solveig.wishList).toBeUndefined()
  addWish(solveig, 'after', about)
  expect(solveig.wishList).toEqual([{ id: 'w1', kind: 'after', other: 'b' }])
})
