import { expect, it } from 'vitest'
import { differences } from './differences.ts'

it('names each place that differs, lines by their id wherever they stand', () => {
  const mine = {
    name: 'Six hours',
    rules: [
      { id: 'a', count: 2 },
      { id: 'b', name: 'kept' },
    ],
  }
  const theirs = {
    name: 'Six hours',
    rules: [
      { id: 'b', name: 'kept' },
      { id: 'a', count: 3 },
    ],
  }
  expect(differences(mine, theirs)).toEqual([{ where: 'rules, a, count', mine: '2', theirs: '3' }])
})

it('shows what only one of the two has', () => {
  expect(differences({ place: 'The Maltings' }, {})).toEqual([
    { where: 'place', mine: 'The Maltings', theirs: '–' },
  ])
  expect(differences([{ id: 'p', name: 'Imre' }], [])).toEqual([
    { where: 'p', mine: 'Imre', theirs: '–' },
  ])
})

it('writes places and values as people say them', () => {
  const minimum = (minimumMs: unknown) => ({ rules: [{ id: 'stopMinimum', value: { minimumMs } }] })
  expect(differences(minimum(45_000), minimum('notKnownYet'))).toEqual([
    { where: 'rules, stop minimum, minimum', mine: '45 s', theirs: 'not known yet' },
  ])
})
