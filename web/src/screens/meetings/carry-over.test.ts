import type { Crew, Regulations } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { crewFor, nextName, rulesFor } from './carry-over.ts'

test('the second meeting of a name counts on', () => {
  expect(nextName('Lantern Forty', ['Lantern Forty'])).toBe('Lantern Forty 2')
  expect(nextName('Lantern Forty 2', ['Lantern Forty 2', 'Lantern Forty 3'])).toBe(
    'Lantern Forty 4',
  )
})

const segment = { id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 60_000 } } as const
const rules: Regulations = {
  ...{ name: 'First', timeZone: 'UTC', midnightAt: 1_000, rules: [] },
  programme: [{ ...segment, plannedAt: 5_000 }],
}

test('times of the other day are left out; order, lengths and rules are kept', () => {
  expect(rulesFor(rules, 'Second')).toEqual({
    ...{ name: 'Second', timeZone: 'UTC', rules: [], programme: [segment] },
  })
})

test('people keep what they can do and wish for, without the hours of the other day', () => {
  const beside = { id: 'w1', kind: 'beside', other: 'otto' } as const
  const night = { id: 'w2', kind: 'notBetween', fromAt: 1_000, toAt: 2_000 } as const
  const ida = { id: 'ida', name: 'Ida', duties: [], paceMs: 9_000, note: 'left-handed' }
  const otto = { id: 'otto', name: 'Otto', duties: [] }
  const crew: Crew = {
    people: [
      {
        ...ida,
        there: [{ id: 't', fromAt: 1_000, toAt: 9_000 }],
        restBlock: { atLeastMs: 3_600_000, fromAt: 2_000, toAt: 8_000 },
        wishList: [beside, night],
      },
      otto,
    ],
  }
  expect(crewFor(crew)).toEqual({
    people: [{ ...ida, restBlock: { atLeastMs: 3_600_000 }, wishList: [beside] }, otto],
  })
})
