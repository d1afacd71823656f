/**
 * Many devices that press at once, each with an outbox and a copy of the log of its own, against the real server.
 * All of them live in this process and share its one thread, so the delays are those of the server and of so
 * many screens together: an upper bound. `npm run bench -- sync` has the server's alone.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import { audit, wholeLog } from '../audit.ts'
import type { Row } from '../bench/row.ts'
import { join, type Device } from '../device.ts'
import { makeMeeting } from '../restart/race.ts'
import { startServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { atMost, exactly, quantile } from './figures.ts'

export interface Load {
  readonly devices: number
  /** A second, of all devices together. */
  readonly presses: number
  readonly seconds: number
}

const P50_MS = 50
const P99_MS = 250

export async function load({ devices, presses, seconds }: Load): Promise<readonly Row[]> {
  const server = await startServer()
  const captain = await join(server.url, await server.captainCode(), 'Device 1')
  const meeting = await makeMeeting(captain)
  const screens = await openScreens(await invited(captain, devices), meeting)
  const delays = measureDelays(screens)
  await pressEvenly(screens, { total: presses * seconds, everyMs: 1000 / presses, delays })
  for (const screen of screens) {
    await screen.until('an empty outbox', ({ sync }) => sync.pending.length === 0)
    await screen.until('every press', ({ sync }) => sync.confirmed.length >= presses * seconds)
  }
  const log = await wholeLog(captain, meeting)
  const found = audit(log, screens)
  const differing = screens.filter(({ sync }) => !isSameLog(sync.confirmed, log))
  for (const screen of screens) screen.close()
  await server.stop()

  const shape = `${devices} devices, ${presses} presses/s, ${seconds} s`
  const row = (name: string, value: number, unit = 'entries') => ({
    figure: `${name} (${shape})`,
    ...{ value, unit },
  })
  return [
    exactly(presses * seconds, row('acknowledged', found.acknowledged)),
    exactly(0, row('lost', found.lost)),
    exactly(0, row('doubled', found.twice)),
    exactly(0, row('gaps in the log’s numbers', found.gaps, 'gaps')),
    exactly(0, row('devices with another log than the server', differing.length, 'devices')),
    exactly(presses * seconds * devices, row('presses seen', delays.seen.length, 'deliveries')),
    atMost(P50_MS, row('press to every screen, p50', quantile(delays.seen, 0.5), 'ms')),
    atMost(P99_MS, row('press to every screen, p99', quantile(delays.seen, 0.99), 'ms')),
  ]
}

async function invited(captain: Device, devices: number): Promise<readonly Device[]> {
  const team = [captain]
  while (team.length < devices) {
    team.push(await captain.invite('pitWall', `Device ${team.length + 1}`))
  }
  return team
}

async function openScreens(
  devices: readonly Device[],
  meeting: string,
): Promise<readonly [Screen, ...Screen[]]> {
  const [first, ...others] = devices.map((device) => new Screen(device, meeting))
  if (!first) throw new Error('Somebody has to press.')
  for (const screen of [first, ...others]) await screen.live()
  return [first, ...others]
}

interface Delays {
  readonly pressed: (entry: Entry, atMs: number) => void
  /** From a press to a screen, in ms; one of each press and screen, the pressing one included. */
  readonly seen: readonly number[]
}

function measureDelays(screens: readonly Screen[]): Delays {
  const pressedAt = new Map<string, number>()
  const seen: number[] = []
  const see = (entries: readonly RecordedEntry[]) => {
    const nowMs = performance.now()
    for (const { id } of entries) {
      const at = pressedAt.get(id)
      if (at !== undefined) seen.push(nowMs - at)
    }
  }
  for (const screen of screens) screen.onConfirmed = see
  return { pressed: ({ id }, atMs) => void pressedAt.set(id, atMs), seen }
}

/** In turns, at an even rate: a press that is late does not make those after it late. */
async function pressEvenly(
  screens: readonly [Screen, ...Screen[]],
  { total, everyMs, delays }: { total: number; everyMs: number; delays: Delays },
): Promise<void> {
  const startedAt = performance.now()
  for (let made = 0; made < total; made += 1) {
    const dueAt = startedAt + made * everyMs
    if (dueAt > performance.now()) await sleep(dueAt - performance.now())
    const screen = screens[made % screens.length] ?? screens[0]
    const atMs = performance.now()
    delays.pressed(screen.press('incident.1', { what: 'deSlot' }), atMs)
  }
}

function isSameLog(here: readonly RecordedEntry[], log: readonly RecordedEntry[]): boolean {
  return JSON.stringify(here) === JSON.stringify(log)
}
