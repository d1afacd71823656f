/**
 * Two houses over one PostgreSQL: two processes, as far as they know.
 * P1  What is pressed at one reaches the screens of the other, every push from where they stood.
 * P2  A device that is changed or taken out at one hears it, or is cut off, at the other within a second.
 * P3  Screens hear who is there at both.
 * P4  The clock that is set at one is set at the other.
 * P5  A code made at one lets in at the other, and wrong ones count at both.
 * P6  Hints may be lost: what they were about arrives all the same.
 * P7  Who wrote is known at both.
 */
import { PROTOCOL_VERSION, type Answer, type Appended, type Push } from '@pitlamp/contract'
import pg from 'pg'
import { io } from 'socket.io-client'
import { v7 as uuidV7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import {
  openBench,
  refusalOf,
  type AppBench,
  type BenchDevice,
  type BenchSocket,
} from '../app-bench.ts'
import { startPostgres, type TestingPostgres } from '../storage/postgres/testing-postgres.ts'

let server: TestingPostgres
let database: string
let here: AppBench
let there: AppBench
let captain: BenchDevice
let meeting: string
const open: BenchSocket[] = []
const benches: AppBench[] = []
const PATIENCE_MS = 120_000
const opened = async () => {
  const bench = await openBench({ database })
  benches.push(bench)
  return bench
}

beforeAll(async () => {
  server = await startPostgres()
  database = await server.database()
  // Both at once, on an empty database: the tables and the team are made once.
  ;[here, there] = await Promise.all([opened(), opened()])
  captain = await here.device('captain')
  meeting = await captain.meeting()
}, PATIENCE_MS)
afterAll(async () => {
  for (const socket of open) socket.close()
  for (const bench of benches) await bench.close()
  await server.stop()
})

const socketAt = (bench: AppBench, { cookie }: BenchDevice) => {
  const socket: BenchSocket = io(bench.url, {
    ...{ transports: ['websocket'], extraHeaders: { cookie } },
    ...{ reconnection: false, forceNew: true },
  })
  open.push(socket)
  return socket
}
const welcomedAt = async (bench: AppBench, device: BenchDevice) => {
  const socket = socketAt(bench, device)
  const answer = await socket.emitWithAck('hello', {
    protocol: PROTOCOL_VERSION,
    meeting,
    after: 0,
  })
  if ('problem' in answer) throw new Error(answer.problem.title)
  return { socket, welcome: answer.ok }
}
const append = (socket: BenchSocket, entries: readonly unknown[]): Promise<Answer<Appended>> =>
  socket.emitWithAck('append', { meeting, entries: [...entries] })
const pushesTo = (socket: BenchSocket) => {
  const pushes: Push[] = []
  socket.on('push', (push) => pushes.push(push))
  return pushes
}

test('P1 presses at both reach the screens of both, in order, each push from where the one before ended', async () => {
  const [a, b] = [await here.device('pitWall'), await there.device('pitWall')]
  const [one, other] = [await welcomedAt(here, a), await welcomedAt(there, b)]
  const heard = [pushesTo(one.socket), pushesTo(other.socket)]
  const press = async (socket: BenchSocket, device: BenchDevice) => {
    for (let n = 0; n < 40; n += 1) await append(socket, [device.entry()])
  }
  await Promise.all([press(one.socket, a), press(other.socket, b)])
  const last = one.welcome.meeting.lastSeq
  for (const pushes of heard) {
    await expect.poll(() => pushes.at(-1)?.to, { timeout: 5_000 }).toBe(last + 80)
    expect(pushes.map(({ from }) => from)).toEqual([
      last,
      ...pushes.slice(0, -1).map(({ to }) => to),
    ])
    const seqs = pushes.flatMap(({ entries }) => entries.map(({ seq }) => seq))
    expect(seqs).toEqual(Array.from({ length: 80 }, (_, index) => last + 1 + index))
  }
})

test('P2 a device changed at one hears it at the other, and one taken out is cut off within a second', async () => {
  const phone = await here.device('pitWall')
  const { socket } = await welcomedAt(there, phone)
  const role = new Promise((resolve) => socket.once('role', resolve))
  await captain.ask(`PATCH /api/devices/${phone.id}`, { body: { role: 'crew' } })
  expect(await role).toEqual({ role: 'crew' })
  const cut = new Promise((resolve) => socket.once('disconnect', resolve))
  const askedAt = performance.now()
  await captain.ask(`PATCH /api/devices/${phone.id}`, { body: { revoked: true } })
  await cut
  expect(performance.now() - askedAt).toBeLessThan(1_000)
})

test('P3 screens hear who is there at both, and no longer who has gone', async () => {
  const [tablet, phone] = [await here.device('pitWall'), await here.device('crew')]
  const { socket } = await welcomedAt(here, tablet)
  let heard: readonly string[] = []
  socket.on('presence', ({ screens }) => (heard = screens.map(({ device }) => device)))
  const { socket: other } = await welcomedAt(there, phone)
  await expect.poll(() => heard, { timeout: 5_000 }).toContain(phone.id)
  expect(heard).toContain(tablet.id)
  other.close()
  await expect.poll(() => heard, { timeout: 5_000 }).not.toContain(phone.id)
})

test('P4 the clock that is set at one is set at the other', async () => {
  const { socket } = await welcomedAt(there, await here.device('crew'))
  const before = there.house.deps.time
  expect(Math.abs(before.now() - here.house.deps.time.now())).toBeLessThan(50)
  const told = new Promise((resolve) => socket.once('clock', resolve))
  const body = { epoch: before.epoch, shiftMs: -7_000 }
  const settled = await captain.ask('POST /api/clock/settle', { body })
  expect(settled.body).toMatchObject({ epoch: 2 })
  expect(await told).toMatchObject({ epoch: 2 })
  expect(there.house.deps.time.epoch).toBe(2)
  expect(Math.abs(there.house.deps.time.now() - here.house.deps.time.now())).toBeLessThan(50)
})

test('P5 a code made at one lets in at the other, once', async () => {
  const asked = await captain.ask('POST /api/invites', { body: { role: 'crew', as: 'typed' } })
  const { code } = asked.body as { code: string }
  const join = (bench: AppBench, given: string) =>
    bench.ask('POST /api/join', { body: { code: given, device: uuidV7(), name: 'A phone' } })
  expect((await join(there, code)).status).toBe(200)
  expect(refusalOf(await join(here, code))).toBe('403 codeUnknown')
  const ticket = await here.house.deps.tickets.write({
    simulator: false,
    onlyWithoutCaptain: false,
  })
  expect((await join(there, ticket)).status).toBe(200)
  expect(refusalOf(await join(here, ticket))).toBe('403 codeUnknown')
  // One wrong code at `here` above; five in ten minutes are too many, wherever they were tried.
  for (const bench of [there, here, there, here]) {
    expect(refusalOf(await join(bench, 'AAAA3333'))).toBe('403 codeUnknown')
  }
  expect(refusalOf(await join(there, 'AAAA3333'))).toBe('429 tooManyTries')
  expect(refusalOf(await join(here, 'AAAA3333'))).toBe('429 tooManyTries')
})

test('P6 without any hint a press and a change arrive within seconds, and hints come again', async () => {
  const [wall, phone] = [await here.device('pitWall'), await here.device('crew')]
  const [{ socket: from }, { socket: to }] = [
    await welcomedAt(here, wall),
    await welcomedAt(there, phone),
  ]
  const pushes = pushesTo(to)
  const cut = new Promise((resolve) => to.once('disconnect', resolve))
  await cutTheLines()
  await append(from, [wall.entry()])
  await expect.poll(() => pushes.length, { timeout: 5_000 }).toBe(1)
  await cutTheLines()
  await captain.ask(`PATCH /api/devices/${phone.id}`, { body: { revoked: true } })
  await cut
})

test('P7 who wrote at one is named in a welcome of the other, by what is said and without', async () => {
  const phone = await here.device('crew')
  const { socket } = await welcomedAt(there, phone)
  const pushes = pushesTo(socket)
  const walls = [await here.device('pitWall'), await here.device('pitWall')] as const
  const from = [await welcomedAt(here, walls[0]), await welcomedAt(here, walls[1])] as const
  await append(from[0].socket, [walls[0].entry()])
  await expect.poll(() => pushes.length, { timeout: 5_000 }).toBe(1)
  await cutTheLines()
  await append(from[1].socket, [walls[1].entry()])
  await expect.poll(() => pushes.length, { timeout: 5_000 }).toBe(2)
  const { welcome } = await welcomedAt(there, phone)
  const named = welcome.writers?.map(({ device }) => device)
  expect(named).toEqual(expect.arrayContaining(walls.map(({ id }) => id)))
})

/** Ends the connections that listen, once there are any: one that was cut is opened again after a moment. */
async function cutTheLines(): Promise<void> {
  const client = new pg.Client({ connectionString: database })
  await client.connect()
  const cut = async () => {
    const { rowCount } = await client.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and application_name = 'pitlamp line'`,
    )
    return rowCount
  }
  await expect.poll(cut).toBeGreaterThan(0)
  await client.end()
}
