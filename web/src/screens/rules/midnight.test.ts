import type { Regulations } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { midnightOf } from './midnight.ts'

const hours = {
  id: 'd',
  kind: 'darkHours',
  value: { from: 22 * 3_600_000, to: 6 * 3_600_000 },
} as const
const regulations = (of: Partial<Regulations>): Regulations => ({
  ...{ name: 'Night', timeZone: 'Europe/Berlin', rules: [hours] },
  programme: [
    { id: 'b', kind: 'briefing' },
    {
      ...{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 3_600_000 } },
      plannedAt: Date.parse('2027-01-16T14:00:00Z'),
    },
  ],
  ...of,
})

test('midnight is that of the day on which the programme first names a time, at the venue', () => {
  // Berlin is an hour ahead in January: its 16th begins at 23:00 UTC on the 15th.
  expect(midnightOf(regulations({}))).toBe(Date.parse('2027-01-15T23:00:00Z'))
  expect(midnightOf(regulations({ timeZone: 'Pacific/Auckland' }))).toBe(
    // 14:00 UTC is 03:00 on the 17th in Auckland, 13 hours ahead.
    Date.parse('2027-01-16T11:00:00Z'),
  )
})

test('there is none where no rule speaks of hours, or the programme names no time', () => {
  expect(midnightOf(regulations({ rules: [] }))).toBeUndefined()
  expect(midnightOf(regulations({ programme: [{ id: 'b', kind: 'briefing' }] }))).toBeUndefined()
})
