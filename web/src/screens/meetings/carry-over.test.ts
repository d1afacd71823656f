import type { Regulations } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { nextName, rulesFor } from './carry-over.ts'

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

test('times of a day that is over are left out, those to come are kept', () => {
  expect(rulesFor(rules, 'Second', 5_001)).toEqual({
    ...{ name: 'Second', timeZone: 'UTC', rules: [], programme: [segment] },
  })
  expect(rulesFor(rules, 'Second', 4_999)).toEqual({ ...rules, name: 'Second' })
})
