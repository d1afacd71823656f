/** Both processes replaced one after the other by those of another version, while devices press. */
import { cpSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import type { Row } from '../bench/row.ts'
import { atLeast, atMost, quantile } from '../long/figures.ts'
import { newRandom } from '../power/random.ts'
import { makeMeeting } from '../restart/race.ts'
import { openCrowd, type Gap, type Settled } from './devices.ts'
import { noneMissing, type Processes } from './kills.ts'
import { startTopology, type Topology } from './topology.ts'

const PROCESSES = 2
/** As an operator waits who looks whether the new one is ready. */
const BETWEEN_MS = 1_000
const SERVED_WITHIN_MS = 3_000

export async function rollOver(shape: Processes): Promise<readonly Row[]> {
  const { devices, presses, rounds, seed } = shape
  const [one, other] = versions()
  const topology = await startTopology({ processes: PROCESSES, program: one })
  try {
    const meeting = await makeMeeting(topology.captain)
    const load = { devices, pressesASecond: presses, random: newRandom(seed) }
    const crowd = await openCrowd({ ...load, captain: topology.captain, meeting })
    const gaps: Gap[] = []
    for (let round = 0; round < rounds; round += 1) {
      const program = round % 2 === 0 ? other : one
      for (let index = 0; index < PROCESSES; index += 1) {
        const noticed = await crowd.pressing(async () => {
          await sleep(BETWEEN_MS)
          return crowd.watch(() => replace(topology, index, program))
        })
        gaps.push(...noticed)
      }
    }
    const settled = await crowd.settle()
    crowd.close()
    return rowsOf(shape, settled, { gaps, savedAfterMs: crowd.savedAfterMs })
  } finally {
    await topology.stop()
  }
}

async function replace(
  topology: Topology,
  index: number,
  program: readonly string[],
): Promise<void> {
  await topology.end(index)
  await topology.start(index, program)
}

/**
 * What is built, twice, each in a folder of its own: two versions as far as processes and files go. Below the top, so
 * that each finds the packages and the screens.
 */
function versions(): readonly [readonly string[], readonly string[]] {
  const top = join(import.meta.dirname, '../..')
  const built = join(top, 'build/server')
  if (!existsSync(built)) throw new Error('There is nothing built: npm run prestart')
  const copy = (name: string) => {
    const folder = join(top, '.cache/versions', name)
    rmSync(folder, { recursive: true, force: true })
    mkdirSync(folder, { recursive: true })
    cpSync(built, folder, { recursive: true })
    return [join(folder, 'main.js')]
  }
  return [copy('one'), copy('other')]
}

interface Seen {
  readonly gaps: readonly Gap[]
  readonly savedAfterMs: readonly number[]
}

function rowsOf(shape: Processes, settled: Settled, { gaps, savedAfterMs }: Seen): readonly Row[] {
  const { devices, presses, rounds } = shape
  const told = `${devices} devices, ${presses} presses/s, both processes replaced ${rounds} ×`
  const row = (name: string, value: number, unit = 'entries') => ({
    figure: `${name} (${told})`,
    ...{ value, unit },
  })
  const times = gaps.map(({ sinceLostMs }) => sinceLostMs)
  return [
    atLeast(rounds * PROCESSES, row('acknowledged', settled.acknowledged)),
    ...noneMissing(settled, row),
    atLeast(rounds, row('screens that changed process', gaps.length, 'screens')),
    atMost(SERVED_WITHIN_MS, row('served by another, median', quantile(times, 0.5), 'ms')),
    atMost(SERVED_WITHIN_MS, row('served by another, the last', quantile(times, 1), 'ms')),
    atMost(SERVED_WITHIN_MS, row('press to saved, median', quantile(savedAfterMs, 0.5), 'ms')),
    atMost(SERVED_WITHIN_MS, row('press to saved, the last', quantile(savedAfterMs, 1), 'ms')),
  ]
}
