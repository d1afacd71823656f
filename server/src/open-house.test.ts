import { once } from 'node:events'
import { connect } from 'node:net'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { openHouse } from './open-house.ts'

test('a connection that never asks anything does not keep a stop from ending', async () => {
  const data = mkdtempSync(join(tmpdir(), 'pitlamp-'))
  const house = await openHouse({ data, host: '127.0.0.1', port: 0, names: {} })
  const [address = ''] = house.deps.addresses()
  const silent = connect(Number(new URL(address).port), '127.0.0.1')
  await once(silent, 'connect')
  const ended = once(silent, 'close')
  silent.resume()
  await house.close()
  await ended
  expect(silent.destroyed).toBe(true)
}, 10_000)
