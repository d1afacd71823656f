import {
  PROTOCOL_VERSION,
  type Answer,
  type Appended,
  type Hello,
  type Push,
  type Welcome,
} from '@pitlamp/contract'
import { io } from 'socket.io-client'
import { v7 as uuidV7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice, type BenchSocket } from '../app-bench.ts'

let bench: AppBench
let captain: BenchDevice
let wall: BenchDevice
let meeting: string
beforeAll(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
  wall = await bench.device('pitWall')
  meeting = await captain.meeting()
})
afterAll(() => bench.close())

const hello = (socket: BenchSocket, more: Partial<Hello> = {}): Promise<Answer<Welcome>> =>
  socket.emitWithAck('hello', { protocol: PROTOCOL_VERSION, meeting, after: 0, ...more })
const welcomed = async (device: BenchDevice) => {
  const socket = device.socket()
  const answer = await hello(socket)
  if ('problem' in answer) throw new Error(answer.problem.title)
  return { socket, welcome: answer.ok }
}
const append = (socket: BenchSocket, entries: readonly unknown[]): Promise<Answer<Appended>> =>
  socket.emitWithAck('append', { meeting, entries: [...entries] })
const pushTo = (socket: BenchSocket) => new Promise<Push>((resolve) => socket.once('push', resolve))
const refusedTo = (socket: BenchSocket) =>
  new Promise((resolve) => socket.once('connect_error', (error) => resolve(error)))

test('K1 a welcome says who this is, how far the log goes and how the clock stands', async () => {
  const { welcome } = await welcomed(wall)
  expect(welcome).toMatchObject({
    device: { id: wall.id, role: 'pitWall' },
    meeting: { id: meeting, lastSeq: 0 },
    clock: { epoch: 1 },
  })
  expect(welcome.clock.doubt).toBeUndefined()
})

test('K2 a press reaches every screen of its meeting, from where they were told the log stands', async () => {
  const phone = await bench.device('viewer')
  const [{ socket: from, welcome }, { socket: to }] = [await welcomed(wall), await welcomed(phone)]
  const elsewhere = wall.socket()
  await hello(elsewhere, { meeting: await captain.meeting() })
  let strayed = false
  elsewhere.on('push', () => (strayed = true))
  const last = welcome.meeting.lastSeq
  const [entry, pushes] = [wall.entry(), [pushTo(from), pushTo(to)]]
  expect(await append(from, [entry])).toMatchObject({ ok: { results: [{ seq: last + 1 }] } })
  for (const push of await Promise.all(pushes)) {
    expect(push).toMatchObject({ meeting, from: last, to: last + 1, entries: [entry] })
  }
  expect(strayed).toBe(false)
})

test('K3 every push begins where the one before ended', async () => {
  const { socket, welcome } = await welcomed(wall)
  const pushes: Push[] = []
  socket.on('push', (push) => pushes.push(push))
  await Promise.all(Array.from({ length: 40 }, () => append(socket, [wall.entry()])))
  const last = welcome.meeting.lastSeq
  await expect.poll(() => pushes.at(-1)?.to).toBe(last + 40)
  expect(pushes.map(({ from }) => from)).toEqual([last, ...pushes.slice(0, -1).map(({ to }) => to)])
})

test('K4 a batch over 64 KiB is answered as too much, and the line stays up', async () => {
  const { socket } = await welcomed(wall)
  const body = JSON.stringify({ words: 'x'.repeat(1_900) })
  const entries = Array.from({ length: 40 }, () => wall.entry({ kind: 'note.1', body }))
  expect(await append(socket, entries)).toMatchObject({ problem: { refusal: 'batchTooLarge' } })
  expect(await append(socket, entries.slice(0, 1))).toMatchObject({ ok: {} })
})

test('K5 a single entry may be larger than a batch: an adopted document goes through', async () => {
  const { socket } = await welcomed(captain)
  // 24,500 quotation marks: 49,000 bytes of JSON text, 98,000 on the wire.
  const body = JSON.stringify('"'.repeat(24_500))
  const entry = captain.entry({ kind: 'adopted.9', body })
  expect(await append(socket, [entry])).toMatchObject({
    ok: { results: [{ outcome: 'recorded' }] },
  })
})

test('K6 messages that make no sense are answered as such', async () => {
  const { socket } = await welcomed(wall)
  const problem = { problem: { refusal: 'malformedRequest' } }
  expect(await hello(socket, { after: -1 })).toMatchObject(problem)
  expect(await socket.emitWithAck('append', 'nonsense' as never)).toMatchObject(problem)
  expect(await hello(socket, { protocol: 99 })).toMatchObject({
    problem: { refusal: 'otherProtocol' },
  })
  expect(await hello(socket, { meeting: uuidV7() })).toMatchObject({
    problem: { refusal: 'otherMeeting' },
  })
})

test('K7 a probe is answered with server time, stamped twice', async () => {
  const { socket } = await welcomed(wall)
  const before = bench.house.deps.time.now()
  const { t0, t1, t2, epoch } = await socket.emitWithAck('probe', { t0: 12.5 })
  expect([t0, epoch]).toEqual([12.5, 1])
  expect(before <= t1 && t1 <= t2 && t2 <= bench.house.deps.time.now()).toBe(true)
})

test('K8 screens hear who is there', async () => {
  const phone = await bench.device('crew')
  const { socket } = await welcomed(wall)
  const { socket: other } = await welcomed(phone)
  const heard = new Set<string>()
  socket.on('presence', ({ screens }) => {
    heard.clear()
    for (const { device } of screens) heard.add(device)
  })
  await expect.poll(() => [...heard], { timeout: 3_000 }).toContain(phone.id)
  other.close()
  await expect.poll(() => [...heard], { timeout: 3_000 }).not.toContain(phone.id)
})

test('K9 a device hears at once that its role changed, and is held to it', async () => {
  const phone = await bench.device('pitWall')
  const { socket } = await welcomed(phone)
  const heard = new Promise((resolve) => socket.once('role', resolve))
  await captain.ask(`PATCH /api/devices/${phone.id}`, { body: { role: 'viewer' } })
  expect(await heard).toEqual({ role: 'viewer' })
  const answer = await append(socket, [phone.entry()])
  expect(answer).toMatchObject({ ok: { results: [{ refusal: 'roleMayNot' }] } })
})

test('K10 a revoked device is cut off within a second and does not come back', async () => {
  const lost = await bench.device('pitWall')
  const { socket } = await welcomed(lost)
  const cut = new Promise((resolve) => socket.once('disconnect', resolve))
  const heard = new Promise((resolve) => socket.once('role', resolve))
  const askedAt = performance.now()
  await captain.ask(`PATCH /api/devices/${lost.id}`, { body: { revoked: true } })
  await cut
  expect(performance.now() - askedAt).toBeLessThan(1_000)
  expect(await heard).toEqual({ role: 'revoked' })
  expect(await refusedTo(lost.socket())).toMatchObject({ data: { refusal: 'revoked' } })
})

test('K11 a socket without a device, or from a page of another site, is not let in', async () => {
  const open = (headers: Record<string, string>) =>
    io(bench.url, {
      transports: ['websocket'],
      extraHeaders: headers,
      reconnection: false,
      forceNew: true,
    })
  expect(await refusedTo(open({}))).toMatchObject({ data: { refusal: 'notJoined' } })
  const foreign = open({ cookie: wall.cookie, origin: 'http://elsewhere.example' })
  expect(await refusedTo(foreign)).not.toHaveProperty('data.refusal')
})

test('K12 a welcome names the devices that wrote into this meeting, and no others', async () => {
  const own = await captain.meeting()
  const [writer, silent] = [await bench.device('pitWall'), await bench.device('crew')]
  const body = { meeting: own, entries: [writer.entry()] }
  await writer.ask(`POST /api/meetings/${own}/entries`, { body })
  await hello(silent.socket(), { meeting: own })
  const answer = await hello(wall.socket(), { meeting: own })
  expect(answer).toMatchObject({ ok: {} })
  expect('ok' in answer && answer.ok.writers).toEqual([
    { device: writer.id, name: 'A pitWall’s device' },
  ])
})

test('K13 what a device says of itself is heard with the presence, and nonsense is not', async () => {
  const phone = await bench.device('crew')
  const [{ socket }, { socket: other }] = [await welcomed(wall), await welcomed(phone)]
  const report = {
    clock: { standing: 'set', boundMs: 50 },
    battery: { charging: true, percent: 85 },
    check: { sound: 'heard', awake: 'plainHttp', at: 7 },
  } as const
  other.emit('report', { clock: 'nonsense' } as never)
  other.emit('report', report)
  let heard: unknown
  socket.on('presence', ({ screens }) => {
    heard = screens.find(({ device }) => device === phone.id)?.report
  })
  await expect.poll(() => heard, { timeout: 4_000 }).toEqual(report)
})

test('K14 a device that only ever asks over HTTP is seen', async () => {
  const feed = await bench.device('pitWall')
  const before = bench.house.deps.time.now()
  await feed.ask('GET /api/me')
  const seenAt = async () => {
    const devices = await bench.house.deps.storage.read.devices(bench.house.deps.team)
    return devices.find(({ id }) => id === feed.id)?.seenAt ?? 0
  }
  await expect.poll(seenAt).toBeGreaterThanOrEqual(Math.floor(before))
})
