import { expect, test } from 'vitest'
import { awayWords } from './reckoned.ts'

const reckoned = { toGoMs: 3_600_000, elapsedMs: 600_000 }

test('a reading within two seconds agrees', () => {
  expect(awayWords(reckoned, 'toGo', 3_602_000)).toBe('Here it is 1:00:00: they agree.')
})

test('a reading far off asks whether it is right', () => {
  // 610 s against 600 s is 10 s; 700 s against 600 s is 100 s, about 2 min.
  expect(awayWords(reckoned, 'gone', 610_000)).toBe('Here it is 10:00: 10 s apart.')
  expect(awayWords(reckoned, 'gone', 700_000)).toBe('Here it is 10:00: 2 min apart. Is it right?')
})

test('more to go than the segment lasts cannot be', () => {
  expect(awayWords({ ...reckoned, lengthMs: 7_200_000 }, 'toGo', 7_260_000)).toBe(
    'The segment lasts 2:00:00: that is more than there is.',
  )
})

test('nothing is compared with what is not reckoned', () => {
  expect(awayWords({}, 'toGo', 1_000)).toBeUndefined()
})
