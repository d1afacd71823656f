import { expect, test } from 'vitest'
import { handsWords } from './hands.ts'

test('what hands on the car cost is said by number', () => {
  const words = (costLaps: number) => handsWords({ allowed: true, costLaps })
  expect(words(1)).toBe('Work allowed, −1 lap')
  expect(words(2)).toBe('Work allowed, −2 laps')
  expect(words(0)).toBe('Work allowed')
})
