import { expect, test } from 'vitest'
import { Fetched } from './fetched.svelte.ts'

test('a part that did not come is asked for again, one that came is not', async () => {
  let asked = 0
  let server = false
  const part = new Fetched(() => {
    asked += 1
    return server ? Promise.resolve('sheet') : Promise.reject(new Error('no server'))
  })
  await part.load()
  expect([part.here, part.missing]).toEqual([undefined, true])

  server = true
  await part.load()
  await part.load()
  expect([part.here, part.missing]).toEqual(['sheet', false])
  // Once without a server, once with; the third needs nothing.
  expect(asked).toBe(2)
})
