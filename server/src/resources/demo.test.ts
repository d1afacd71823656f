import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice } from '../app-bench.ts'
import type { OpenDemo } from '../deps.ts'
import { openDemo as simulate } from '../simulator/demo.ts'

let bench: AppBench
let captain: BenchDevice
const ends: (() => void)[] = []
const openDemo: OpenDemo = async (at) => {
  const race = await simulate(at)
  ends.push(race.stop)
  return race
}
beforeAll(async () => {
  bench = await openBench({ openDemo })
  captain = await bench.device('captain')
})
afterAll(async () => {
  for (const end of ends) end()
  await bench.close()
})

test('D1 one press opens a fictional meeting that is already running, at the chosen speed', async () => {
  const opened = await captain.ask('POST /api/demo', { body: { speed: 20 } })
  expect(opened.status).toBe(200)
  expect(opened.body).toMatchObject({ fictional: true, clock: { rate: 20 } })
  const { id, lastSeq } = opened.body as { id: string; lastSeq: number }
  expect(lastSeq).toBeGreaterThan(10)
  expect((await captain.ask('GET /api/meetings')).body).toMatchObject({ meetings: [{ id }] })
})

test('D1 the one on fixed lanes opens when it is asked for, shortly before the draw', async () => {
  const opened = await captain.ask('POST /api/demo', { body: { of: 'lanes', speed: 1 } })
  expect(opened.body).toMatchObject({ name: 'Six Lanes at the Salt Store', clock: { rate: 1 } })
})

test('D2 the simulator joins like any screen, and is no captain to the next start', async () => {
  const { deps } = bench.house
  const devices = await deps.storage.read.devices(deps.team)
  expect(devices.map(({ role }) => role)).toEqual(['captain', 'captain', 'captain'])
  const revoked = { device: captain.id, change: { revoked: true }, nowMs: 0 } as const
  await deps.storage.run('changeDevice', { team: deps.team, ...revoked })
  expect(await deps.storage.read.hasCaptain(deps.team)).toBe(false)
})
