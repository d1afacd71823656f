/**
 * A copy is made beside the running server, and put back.
 *
 * B1  A copy made while devices append as fast as they can holds the log from 1 on without a gap, and in it all
 *     that was acknowledged before it was begun.
 * B2  Put back on the same machine, every device sends again what the copy has not, one that joined since included,
 *     and everything that was shown as saved is in the log once.
 * B3  So it is on a machine that had no store, for those that had joined before; and the clock of a later epoch,
 *     that only the devices know of, is followed.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join as joinPath } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { clockStandingSchema } from '@pitlamp/contract'
import { cursor } from '@pitlamp/sync'
import { afterAll, describe, expect, it } from 'vitest'
import { audit, wholeLog } from '../audit.ts'
import { join } from '../device.ts'
import { newPresser, press } from '../power/pressing.ts'
import { newRandom } from '../power/random.ts'
import { serverCommand, startServer, type RunningServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { seeds } from '../seeds.ts'
import { makeMeeting } from './race.ts'

const folder = mkdtempSync(joinPath(tmpdir(), 'pitlamp-copies-'))
afterAll(() => rmSync(folder, { recursive: true }))

describe('a copy put back', () => {
  it.for(seeds)('B1: made under writes (seed %d)', async (seed) => {
    const server = await startServer()
    const captain = await join(server.url, await server.captainCode(), 'Captain')
    const meeting = await makeMeeting(captain)
    const devices = [captain, await captain.invite('pitWall', 'Wall')]
    const pressers = devices.map(newPresser)
    const random = newRandom(seed)
    const stopped = Promise.all(pressers.map((presser) => press(presser, meeting, random)))
    const told = () => pressers.flatMap(({ acknowledged }) => [...acknowledged.keys()])
    while (told().length < 50) await sleep(1)
    const before = told()
    const copy = joinPath(folder, `under-writes-${seed}`)
    await serverCommand('backup', copy, '--data', server.data)
    const during = told().length - before.length
    const whole = await wholeLog(captain, meeting)
    await server.kill()
    await stopped

    const data = joinPath(folder, `restored-${seed}`)
    await serverCommand('restore', copy, '--data', data)
    const again = await startServer({ data, port: server.port })
    const log = await wholeLog(captain, meeting)
    expect(log).toEqual(whole.slice(0, log.length))
    const held = new Set(log.map(({ id }) => id))
    expect(before.filter((id) => !held.has(id))).toEqual([])
    expect(during).toBeGreaterThan(0)
    await again.stop()
    await remove(server)
  })

  it('B2: on the same machine', async () => {
    const { server, captain, meeting, screens, copy } = await copied('same')
    const late = await new Screen(await captain.invite('crew', 'Late'), meeting).live()
    const everybody = [...screens, late]
    await pressed(everybody, 'after the copy')
    await server.kill()
    await serverCommand('restore', copy, '--data', server.data)
    const again = await startServer({ data: server.data, port: server.port })
    // Two entries are in the copy; three are not.
    for (const screen of everybody) await hasAll(screen, 5)
    expect(audit(await wholeLog(captain, meeting), everybody)).toEqual({
      ...{ acknowledged: 5, lost: 0, gaps: 0, twice: 0, unsent: 0 },
    })
    for (const screen of everybody) {
      expect(screen.sync.setAside).toEqual([])
      screen.close()
    }
    await again.stop()
    await remove(server)
  })

  it('B3: on another machine, with a later epoch', async () => {
    const { server, captain, meeting, screens, copy } = await copied('other')
    const settled = await captain.call('POST', '/api/clock/settle', { epoch: 1, shiftMs: 0 })
    expect(clockStandingSchema.parse(settled).epoch).toBe(2)
    for (const screen of screens) {
      await screen.until('the new epoch', ({ clockStanding }) => clockStanding?.epoch === 2)
      await screen.live()
    }
    await pressed(screens, 'after the copy')
    await server.kill()
    const data = joinPath(folder, 'other-machine')
    await serverCommand('restore', copy, '--data', data)
    const again = await startServer({ data, port: server.port })
    for (const screen of screens) await hasAll(screen, 4)
    expect(audit(await wholeLog(captain, meeting), screens)).toEqual({
      ...{ acknowledged: 4, lost: 0, gaps: 0, twice: 0, unsent: 0 },
    })
    const standing = clockStandingSchema.parse(await captain.call('GET', '/api/clock'))
    expect([standing.epoch, standing.doubt]).toEqual([2, undefined])
    await again.kill()
    const third = await startServer({ data, port: server.port })
    for (const screen of screens) await screen.live()
    const kept = clockStandingSchema.parse(await captain.call('GET', '/api/clock'))
    expect(kept.epoch).toBe(2)
    for (const screen of screens) screen.close()
    await third.stop()
    await remove(server)
  })
})

/** Two screens, each with an entry that is in the copy. */
async function copied(name: string) {
  const server = await startServer()
  const captain = await join(server.url, await server.captainCode(), 'Captain')
  const meeting = await makeMeeting(captain)
  const devices = [captain, await captain.invite('pitWall', 'Wall')]
  const screens = devices.map((device) => new Screen(device, meeting))
  for (const screen of screens) await screen.live()
  await pressed(screens, 'before the copy')
  const copy = joinPath(folder, name)
  await serverCommand('backup', copy, '--data', server.data)
  return { server, captain, meeting, screens, copy }
}

/** Each presses once, and all have it. */
async function pressed(screens: readonly Screen[], words: string): Promise<void> {
  const all = Math.max(...screens.map(({ sync }) => cursor(sync))) + screens.length
  for (const screen of screens) screen.press('note.1', { words })
  for (const screen of screens) await hasAll(screen, all)
}

async function hasAll(screen: Screen, entries: number): Promise<void> {
  await screen.until(
    `all ${entries} entries, and an empty outbox`,
    ({ connected, sync }) =>
      connected && !sync.unchecked && cursor(sync) >= entries && sync.pending.length === 0,
  )
}

/** The folder of a server that was killed and not started again. */
async function remove(server: RunningServer): Promise<void> {
  await server.kill()
  rmSync(server.data, { recursive: true, force: true })
}
