/**
 * The server is killed in the middle of a running meeting and started again.
 *
 * R1  Countdowns are right on every screen, old and new, to within 100 ms.
 * R2  Presses that were under way, or were made while the server was gone, are saved, once.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import type { Entry } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { join } from '../device.ts'
import { startServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { makeMeeting, pressTheRace, worst } from './race.ts'

/** How long after a press the server is killed: before it was read, in the middle, after it was answered. */
const KILLED_AFTER_MS = [0, 1, 2, 5, 20]

it(
  'R1, R2: goes on as if nothing had been, with nothing lost or twice',
  { timeout: 120_000 },
  async () => {
    let server = await startServer()
    const captain = await join(server.url, await server.captainCode(), 'Captain')
    const meeting = await makeMeeting(captain)
    const wall = await new Screen(captain, meeting).live()
    const phone = await new Screen(await captain.invite('crew', 'Phone'), meeting).live()
    const greenAt = await pressTheRace(wall)
    const before = wall.sync.confirmed.length

    const pressed: Entry[] = []
    for (const [index, ms] of KILLED_AFTER_MS.entries()) {
      pressed.push(wall.press('incident.1', { what: 'deSlot' }))
      pressed.push(phone.press('faultNoted.1', { fault: `Braid ${index}` }))
      if (ms > 0) await sleep(ms)
      await server.kill()
      pressed.push(wall.press('note.1', { words: `The server was gone, ${index}` }))
      server = await startServer({ data: server.data, port: server.port })
      await Promise.all([wall.live(), phone.live()])
    }

    const tablet = await new Screen(await captain.invite('pitWall', 'Tablet'), meeting).live()
    const saved = () =>
      pressed.every((entry) => tablet.sync.confirmed.some(({ id }) => id === entry.id))
    await tablet.until('every press', saved)
    const log = tablet.sync.confirmed
    expect(log).toHaveLength(before + 3 * KILLED_AFTER_MS.length)
    expect(new Set(log.map(({ id }) => id)).size).toBe(log.length)
    await wall.until('every press', () => wall.sync.pending.length === 0)
    expect(wall.state()).toEqual(tablet.state())
    expect(tablet.state().car.incidents).toHaveLength(KILLED_AFTER_MS.length)
    for (const ms of worst([wall, phone, tablet], greenAt)) expect(ms).toBeLessThanOrEqual(100)

    for (const screen of [wall, phone, tablet]) screen.close()
    await server.stop()
  },
)
