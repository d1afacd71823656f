/** The server killed again and again in the middle of a race, and what two screens and a new one then hold. */
import { setTimeout as sleep } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import { audit, wholeLog, type Audit } from '../audit.ts'
import { join } from '../device.ts'
import { startServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { makeMeeting, pressTheRace, worst } from './race.ts'

export interface Killed extends Audit {
  /** Both screens and the new one fold to the same state. */
  readonly agreed: boolean
  readonly incidents: number
  /** How far the worst countdown of any screen was off at the end. */
  readonly countdownOffMs: number
}

/** How long after a press each kill comes; a press of the wall, one of a phone, and one while it is gone. */
export async function killAgainAndAgain(afterMs: readonly number[]): Promise<Killed> {
  let server = await startServer()
  const captain = await join(server.url, await server.captainCode(), 'Captain')
  const meeting = await makeMeeting(captain)
  const wall = await new Screen(captain, meeting).live()
  const phone = await new Screen(await captain.invite('crew', 'Phone'), meeting).live()
  const greenAt = await pressTheRace(wall)

  for (const [index, ms] of afterMs.entries()) {
    wall.press('incident.1', { what: 'deSlot' })
    phone.press('faultNoted.1', { fault: `Braid ${index}` })
    if (ms > 0) await sleep(ms)
    await server.kill()
    wall.press('note.1', { words: `The server was gone, ${index}` })
    server = await startServer({ data: server.data, port: server.port })
    await Promise.all([wall.live(), phone.live()])
  }

  const tablet = await new Screen(await captain.invite('pitWall', 'Tablet'), meeting).live()
  const screens = [wall, phone, tablet]
  const made = wall.n + phone.n
  for (const screen of screens) {
    await screen.until('every press', ({ sync }) => sync.confirmed.length >= made)
    await screen.until('an empty outbox', ({ sync }) => sync.pending.length === 0)
  }
  const state = tablet.state()
  const killed = {
    ...audit(await wholeLog(captain, meeting), [wall, phone]),
    agreed: screens.every((screen) => isDeepStrictEqual(screen.state(), state)),
    incidents: state.car.incidents.length,
    countdownOffMs: Math.max(...worst(screens, greenAt)),
  }
  for (const screen of screens) screen.close()
  await server.stop()
  return killed
}
