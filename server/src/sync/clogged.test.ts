import { expect, test } from 'vitest'
import { unsentBytes } from './clogged.ts'

test('what waits is what the system has not taken and what is queued behind it', () => {
  const connection = {
    transport: { socket: { bufferedAmount: 1_000 } },
    writeBuffer: [{ data: 'x'.repeat(30) }, {}, { data: 'y' }],
  }
  expect(unsentBytes(connection)).toBe(1_031)
  expect(unsentBytes({ transport: {}, writeBuffer: [] })).toBe(0)
})
