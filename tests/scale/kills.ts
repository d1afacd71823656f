/** One of two processes killed again and again while many devices press: who notices, for how long, and what is lost. */
import { setTimeout as sleep } from 'node:timers/promises'
import type { Row } from '../bench/row.ts'
import { atLeast, atMost, exactly, quantile } from '../long/figures.ts'
import { newRandom } from '../power/random.ts'
import { makeMeeting } from '../restart/race.ts'
import { openCrowd, type Gap, type Settled } from './devices.ts'
import { startTopology, type Topology } from './topology.ts'

export interface Processes {
  readonly devices: number
  /** A second, of all devices together. */
  readonly presses: number
  readonly kills: number
  /** How often both processes are replaced. */
  readonly rounds: number
  readonly seed: number
}

const PROCESSES = 2
/** From the first press to the kill. */
const AT_MOST_QUIET_MS = 1_500
const SERVED_WITHIN_MS = 3_000

export async function killProcesses(shape: Processes): Promise<readonly Row[]> {
  const { devices, presses, kills, seed } = shape
  const random = newRandom(seed)
  const topology = await startTopology({ processes: PROCESSES })
  try {
    const meeting = await makeMeeting(topology.captain)
    const load = { devices, pressesASecond: presses, random }
    const crowd = await openCrowd({ ...load, captain: topology.captain, meeting })
    const gaps: Gap[] = []
    for (let killed = 0; killed < kills; killed += 1) {
      const { index, there } = busy(topology, random.below(devices))
      const noticed = await crowd.pressing(async () => {
        await sleep(random.below(AT_MOST_QUIET_MS))
        return crowd.watch(() => topology.kill(index))
      })
      gaps.push(...noticed)
      const times = noticed.map(({ sinceBeginningMs }) => Math.round(sinceBeginningMs))
      console.error(
        `Kill ${killed + 1}, process ${index + 1} with ${there} screens: back after ${spread(times)}`,
      )
      await topology.start(index)
    }
    const settled = await crowd.settle()
    crowd.close()
    return rowsOf(shape, settled, gaps)
  } finally {
    await topology.stop()
  }
}

/** The process that serves this one of all screens, in the order of the processes: one that is idle is not worth a kill. */
function busy({ proxy, servers }: Topology, screen: number) {
  let before = 0
  for (const [index, { port }] of servers.entries()) {
    const there = proxy.screensAt(port)
    before += there
    if (screen < before) return { index, there }
  }
  throw new Error('Nobody serves this screen.')
}

function spread(times: readonly number[]): string {
  const [p50, max] = [quantile(times, 0.5), quantile(times, 1)]
  return `${p50} ms (median of ${times.length}), ${max} ms (the last)`
}

function rowsOf(shape: Processes, settled: Settled, gaps: readonly Gap[]): readonly Row[] {
  const { devices, presses, kills, seed } = shape
  const told = `${devices} devices, ${presses} presses/s, one of two killed ${kills} ×, seed ${seed}`
  const row = (name: string, value: number, unit = 'entries') => ({
    figure: `${name} (${told})`,
    ...{ value, unit },
  })
  const times = gaps.map(({ sinceBeginningMs }) => sinceBeginningMs)
  return [
    atLeast(kills, row('acknowledged', settled.acknowledged)),
    ...noneMissing(settled, row),
    // A process that served nobody was not killed under load.
    atLeast(kills, row('screens that lost their process', gaps.length, 'screens')),
    atMost(SERVED_WITHIN_MS, row('served by another, median', quantile(times, 0.5), 'ms')),
    atMost(SERVED_WITHIN_MS, row('served by another, p99', quantile(times, 0.99), 'ms')),
    atMost(SERVED_WITHIN_MS, row('served by another, the last', quantile(times, 1), 'ms')),
  ]
}

type MakeRow = (
  name: string,
  value: number,
  unit?: string,
) => { readonly figure: string; readonly value: number; readonly unit: string }

export function noneMissing(settled: Settled, row: MakeRow): readonly Row[] {
  return [
    exactly(0, row('lost', settled.lost)),
    exactly(0, row('doubled', settled.twice)),
    exactly(0, row('gaps in the log’s numbers', settled.gaps, 'gaps')),
    exactly(0, row('made and not saved', settled.unsent)),
    exactly(0, row('set aside', settled.setAside)),
    exactly(0, row('devices with another log than the server', settled.differing, 'devices')),
  ]
}
