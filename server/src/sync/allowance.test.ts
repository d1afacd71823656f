import { expect, test } from 'vitest'
import { allowance } from './allowance.ts'

test('a screen may ask 400 times at once and 200 times a second after that', () => {
  let now = 0
  const mayGoOn = allowance(() => now)
  const granted = (asked: number) => Array.from({ length: asked }, mayGoOn).filter(Boolean).length
  expect(granted(500)).toBe(400)
  now += 500
  expect(granted(500)).toBe(100)
  now += 60_000
  expect(granted(500)).toBe(400)
})
