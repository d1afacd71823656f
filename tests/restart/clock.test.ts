/**
 * The server is started again on a machine whose clock is wrong.
 *
 * C1  A clock behind what was recorded, or other than what the devices reckon, is in doubt, and every
 *     screen is told.
 * C2  The devices' median is offered, and one press of the captain's settles it: a new epoch, no doubt,
 *     and countdowns right to within 100 ms on every screen. A second press moves nothing.
 * C3  What was settled holds over a further restart while the machine's clock is still wrong.
 * C4  A restart with a right clock is not in doubt.
 */
import { join as joinPath } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { clockStandingSchema, type ClockStanding } from '@pitlamp/contract'
import { cursor } from '@pitlamp/sync'
import { describe, expect, it } from 'vitest'
import { join, type Device } from '../device.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { makeMeeting, pressTheRace, worst } from './race.ts'

const TIME_MS = 120_000
/** What a device reckons arrives as late as a busy machine makes it, and is offered by so much wrong. */
const retry = 2
const HOUR_MS = 3_600_000
/** So that a clock that only went on from what was recorded is seen to be behind. */
const DOWN_MS = 300

describe('a restart', () => {
  it.for([
    { when: 'an hour behind', shiftMs: -HOUR_MS, why: 'behindItsMark' },
    { when: 'an hour ahead', shiftMs: HOUR_MS, why: 'devicesDiffer' },
  ])('C1, C2, C3: with the clock $when', { timeout: TIME_MS, retry }, async ({ shiftMs, why }) => {
    const { server, captain, screens, greenAt } = await openMeeting()

    const wrong = await restart(server, shiftMs)
    const inDoubt = ({ clockStanding }: Screen) => clockStanding?.doubt?.devices === 3
    await Promise.all(screens.map((screen) => screen.until('the doubt', inDoubt)))
    await Promise.all(screens.map((screen) => screen.live()))
    const { epoch, doubt } = await standing(captain)
    expect(screens.map(({ clockStanding }) => clockStanding?.doubt?.why)).toEqual([why, why, why])
    const offeredMs = doubt?.offeredShiftMs ?? NaN
    const truthMs = Date.now() - (await standing(captain)).serverMs
    console.log(`offered ${offeredMs}, off by ${Math.round(offeredMs - truthMs)} ms`)
    expect(Math.abs(offeredMs - truthMs)).toBeLessThan(1_000)
    expect(Math.max(...worst(screens, greenAt))).toBeGreaterThan(100)

    const press = () => captain.call('POST', '/api/clock/settle', { epoch, shiftMs: offeredMs })
    await press()
    await press()
    await Promise.all(screens.map((screen) => screen.until('the new epoch', settledAs(epoch + 1))))
    await Promise.all(screens.map((screen) => screen.live()))
    for (const ms of worst(screens, greenAt)) expect(ms).toBeLessThanOrEqual(100)

    const again = await restart(wrong, shiftMs)
    await Promise.all(screens.map((screen) => screen.live()))
    expect(await standing(captain)).toEqual(withoutDoubt(epoch + 1))
    for (const ms of worst(screens, greenAt)) expect(ms).toBeLessThanOrEqual(100)

    for (const screen of screens) screen.close()
    await again.stop()
  })

  it('C4: with a right clock is not in doubt', { timeout: TIME_MS }, async () => {
    const { server, captain, screens, greenAt } = await openMeeting()
    const { epoch } = await standing(captain)
    const again = await restart(server, 0)
    await Promise.all(screens.map((screen) => screen.live()))
    expect(await standing(captain)).toEqual(withoutDoubt(epoch))
    for (const ms of worst(screens, greenAt)) expect(ms).toBeLessThanOrEqual(100)
    for (const screen of screens) screen.close()
    await again.stop()
  })
})

/** Three devices that know the server's time, and a race that runs. */
async function openMeeting() {
  const server = await startServer()
  const captain = await join(server.url, await server.captainCode(), 'Captain')
  const meeting = await makeMeeting(captain)
  const devices = [
    captain,
    await captain.invite('pitWall', 'Wall'),
    await captain.invite('crew', 'Phone'),
  ]
  const screens = devices.map((device) => new Screen(device, meeting))
  for (const screen of screens) await screen.live()
  const [wall] = screens
  if (!wall) throw new Error('There is no wall.')
  const greenAt = await pressTheRace(wall)
  const hasAll = ({ sync }: Screen) => cursor(sync) === cursor(wall.sync)
  await Promise.all(screens.map((screen) => screen.until('the race', hasAll)))
  return { server, captain, screens, greenAt }
}

async function restart(server: RunningServer, shiftMs: number): Promise<RunningServer> {
  await server.kill()
  await sleep(DOWN_MS)
  return startServer({
    data: server.data,
    port: server.port,
    preload: [joinPath(import.meta.dirname, 'shifted-clock.mjs')],
    env: { CLOCK_SHIFT_MS: String(shiftMs) },
  })
}

async function standing(device: Device): Promise<ClockStanding> {
  return clockStandingSchema.parse(await device.call('GET', '/api/clock'))
}

const settledAs = (epoch: number) => (screen: Screen) =>
  screen.clockStanding?.epoch === epoch && screen.clockStanding.doubt === undefined

const withoutDoubt = (epoch: number) => ({ epoch, serverMs: expect.any(Number) as number })
