import { expect, test } from 'vitest'
import { Tries } from './tries.ts'

test('an address that tried five times waits ten minutes from its last try; others do not', () => {
  let now = 0
  const tries = new Tries(() => now)
  const begun = Array.from({ length: 6 }, () => tries.begin('192.0.2.1'))
  expect(begun).toEqual([true, true, true, true, true, false])
  expect(tries.begin('192.0.2.2')).toBe(true)
  now = 599_999
  expect(tries.begin('192.0.2.1')).toBe(false)
  now = 600_000
  expect(tries.begin('192.0.2.1')).toBe(true)
})

test('a right code forgives the wrong ones', () => {
  const tries = new Tries(() => 0)
  for (let wrong = 0; wrong < 5; wrong += 1) tries.begin('192.0.2.1')
  tries.succeeded('192.0.2.1')
  expect(tries.begin('192.0.2.1')).toBe(true)
})

test('it does not remember more addresses than it must', () => {
  const tries = new Tries(() => 0)
  for (let wrong = 0; wrong < 5; wrong += 1) tries.begin('first')
  for (let address = 0; address < 10_000; address += 1) tries.begin(String(address))
  expect(tries.begin('first')).toBe(true)
})
