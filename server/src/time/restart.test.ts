import { PROTOCOL_VERSION, type ClockStanding } from '@pitlamp/contract'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice } from '../app-bench.ts'

const HOUR = 3_600_000

let bench: AppBench
let captain: BenchDevice
let meeting: string
let wall: number
const clocks = { wall: () => wall, monotonic: () => performance.now() }
beforeEach(async () => {
  wall = Date.UTC(2030, 5, 1, 12)
  bench = await openBench({ clocks })
  captain = await bench.device('captain')
  meeting = await captain.meeting()
})
afterEach(() => bench.close())

const now = () => bench.house.deps.time.now()
const helloWith = (device: BenchDevice, serverMs: number) =>
  device.socket().emitWithAck('hello', {
    ...{ protocol: PROTOCOL_VERSION, meeting, after: 0 },
    reckoned: { serverMs: Math.round(serverMs), boundMs: 20, epoch: 1 },
  })

for (const shift of [-HOUR, HOUR]) {
  test(`T6 ${shift < 0 ? 'one hour back' : 'one hour ahead'}: in doubt, told to every screen, settled by one press`, async () => {
    const devices = [captain, await bench.device('pitWall'), await bench.device('crew')]
    const before = now()
    wall += 1_000 + shift
    await bench.restart()
    const told: ClockStanding[] = []
    const listener = captain.socket().on('clock', (standing) => told.push(standing))
    await expect.poll(() => listener.connected).toBe(true)
    for (const device of devices) await helloWith(device, before + 1_000)
    const standing = (await captain.ask('GET /api/clock')).body as ClockStanding
    expect(standing.doubt).toMatchObject({
      ...{ devices: 3, why: shift < 0 ? 'behindItsMark' : 'devicesDiffer' },
    })
    const shiftMs = standing.doubt?.offeredShiftMs ?? 0
    const settled = await captain.ask('POST /api/clock/settle', { body: { epoch: 1, shiftMs } })
    expect(settled.body).toMatchObject({ epoch: 2 })
    expect(settled.body).not.toHaveProperty('doubt')
    await expect.poll(() => told.at(-1)?.epoch).toBe(2)
    expect(told.some(({ doubt }) => doubt?.devices === 3)).toBe(true)
    // The devices were right; the rest of the second is what the test itself took.
    expect(Math.abs(now() - (before + 1_000))).toBeLessThan(3_000)

    wall += 1_000
    const settledAt = now()
    await bench.restart()
    expect(now() - settledAt).toBeLessThan(4_000)
    expect(bench.house.deps.time.standing()).toMatchObject({ epoch: 2 })
    expect(bench.house.deps.time.standing()).not.toHaveProperty('doubt')
  })
}

test('T7 a clock settled twice is settled once, and an epoch that never was is refused', async () => {
  const settle = (epoch: number, shiftMs: number) =>
    captain.ask('POST /api/clock/settle', { body: { epoch, shiftMs } })
  expect((await settle(1, 50)).body).toMatchObject({ epoch: 2 })
  expect((await settle(1, 50)).body).toMatchObject({ epoch: 2 })
  expect((await settle(3, 50)).status).toBe(400)
})
