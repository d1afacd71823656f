import type { Presence, RoleSaid, Welcome } from '@pitlamp/contract'
import { afterAll, beforeAll, expect, test } from 'vitest'
import {
  openBench,
  refusalOf,
  type AppBench,
  type BenchDevice,
  type BenchSocket,
} from '../app-bench.ts'

let bench: AppBench
let captain: BenchDevice
let tablet: BenchDevice
let meeting: string
beforeAll(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
  tablet = await bench.device('pitWall')
  meeting = await captain.meeting()
})
afterAll(() => bench.close())

const path = (way: string) => `POST /api/meetings/${meeting}/wall/${way}`
const take = (device: BenchDevice) => device.ask(path('take'), { body: {} })
const allow = (device: BenchDevice, mayTakeWallIn: string | null = meeting) =>
  captain.ask(`PATCH /api/devices/${device.id}`, { body: { mayTakeWallIn } })
const welcome = async (socket: BenchSocket) =>
  ((await socket.emitWithAck('hello', { protocol: 1, meeting, after: 0 })) as { ok: Welcome }).ok
const says = (socket: BenchSocket) =>
  new Promise<RoleSaid>((resolve) => socket.once('role', resolve))
/** The next presence that says so. */
const presence = (socket: BenchSocket, holds: (said: Presence) => boolean) =>
  new Promise<Presence>((resolve) => {
    socket.on('presence', (said) => holds(said) && resolve(said))
  })

test('W1 a phone that may not take the wall does not, nor does a viewer, nor need the wall', async () => {
  const phone = await bench.device('crew')
  expect(refusalOf(await take(phone))).toBe('403 wallNotGiven')
  expect(refusalOf(await take(await bench.device('viewer')))).toBe('403 roleMayNot')
  expect(refusalOf(await take(tablet))).toBe('403 roleMayNot')
  expect(refusalOf(await bench.ask(path('take'), { body: {} }))).toBe('401 notJoined')
})

test('W2 taken, the phone is told and records as the wall, and every screen hears who has it', async () => {
  const phone = await bench.device('crew')
  const [socket, wall] = [phone.socket(), tablet.socket()]
  expect((await welcome(socket)).device).toEqual({
    ...{ id: phone.id, name: 'A crew’s device', role: 'crew' },
  })
  await welcome(wall)
  const may = says(socket)
  await allow(phone)
  expect(await may).toEqual({ role: 'crew', wall: 'mayTake' })
  const [told, shown] = [says(socket), presence(wall, ({ wallTaken = [] }) => wallTaken.length > 0)]
  expect((await take(phone)).body).toMatchObject({ device: { id: phone.id, role: 'pitWall' } })
  expect(await told).toEqual({ role: 'pitWall', wall: 'taken' })
  const { wallTaken, screens } = await shown
  expect(wallTaken).toEqual([{ device: phone.id, name: 'A crew’s device' }])
  expect(screens.find(({ device }) => device === phone.id)?.role).toBe('pitWall')
  const entries = [phone.entry()]
  const answer = await socket.emitWithAck('append', { meeting, entries })
  expect(answer).toMatchObject({ ok: { results: [{ role: 'pitWall' }] } })
  // A line that breaks does not take the wall away.
  const again = await welcome(phone.socket())
  expect(again.device).toMatchObject({ role: 'pitWall', wall: 'taken' })

  const back = says(socket)
  const gone = presence(wall, ({ wallTaken: taken }) => taken?.length === 0)
  await tablet.ask(path('take-back'), { body: { device: phone.id } })
  expect(await back).toEqual({ role: 'crew', wall: 'mayTake' })
  await gone
  const refused = await socket.emitWithAck('append', { meeting, entries: [phone.entry()] })
  expect(refused).toMatchObject({ ok: { results: [{ refusal: 'roleMayNot' }] } })
})

test('W3 the phone gives it back itself, the captain takes it back, crew do not', async () => {
  const phone = await bench.device('crew')
  const other = await bench.device('crew')
  await allow(phone)
  await take(phone)
  const body = { device: phone.id }
  expect(refusalOf(await other.ask(path('take-back'), { body }))).toBe('403 roleMayNot')
  expect((await phone.ask(path('give-back'), { body: {} })).body).toMatchObject({
    device: { role: 'crew' },
  })
  await take(phone)
  expect((await captain.ask(path('take-back'), { body })).body).toMatchObject({
    device: { role: 'crew' },
  })
})

test('W4 with the permission the captain takes the wall back too, and the wall is told', async () => {
  const phone = await bench.device('crew')
  await allow(phone)
  await take(phone)
  const wall = tablet.socket()
  await welcome(wall)
  await presence(wall, ({ wallTaken = [] }) => wallTaken.some(({ device }) => device === phone.id))
  const gone = presence(wall, ({ wallTaken = [] }) => wallTaken.length === 0)
  await allow(phone, null)
  await gone
})
