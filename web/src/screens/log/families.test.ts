import { kinds } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { familyOf } from './families.ts'

it('puts every kind of this build into the family it is declared in', () => {
  // 17 of race control, 7 of people, 15 of the car, 6 of the record.
  const counted = { raceControl: 0, people: 0, car: 0, record: 0 }
  for (const kind of Object.keys(kinds)) counted[familyOf(kind)] += 1
  expect(counted).toEqual({ raceControl: 18, people: 8, car: 15, record: 6 })
})

it('takes a kind it does not know as one of race control', () => {
  expect(familyOf('jokerLap.1')).toBe('raceControl')
})
