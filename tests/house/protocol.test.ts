/** The wire is pinned: another shape under the same protocol number fails here. */
import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import * as z from 'zod/mini'
import * as contract from '@pitlamp/contract'

/**
 * What the wire looked like when the number was given. To change it on purpose, raise the number too; a message
 * that is only added, which screens of this number never send or ask for, keeps it.
 */
const PINNED = {
  version: 1,
  sha256: '0789379f2591e2963d3a23b1dd9bcfbdf3a7d39833718e689ea9433b278699a0',
}

test('the messages are those of this protocol number', () => {
  const shapes = Object.entries(contract)
    .filter(([name]) => name.endsWith('Schema'))
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, schema]) => [
      name,
      z.toJSONSchema(schema as z.ZodMiniType, { unrepresentable: 'any' }),
    ])
  const sha256 = createHash('sha256').update(JSON.stringify(shapes)).digest('hex')
  expect(shapes.length).toBeGreaterThan(20)
  expect({ version: contract.PROTOCOL_VERSION, sha256 }).toEqual(PINNED)
})
