import { v7 as uuidV7 } from 'uuid'
import type { TrayLine } from '@pitlamp/contract'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'

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

/** A tablet that was taken out and hands over what it still kept. */
async function lostTablet(presses: number) {
  const lost = await bench.device('pitWall')
  await captain.ask(`PATCH /api/devices/${lost.id}`, { body: { revoked: true } })
  const entries = Array.from({ length: presses }, () => lost.entry())
  await lost.ask(`POST /api/meetings/${meeting}/entries`, { body: { meeting, entries } })
  return { lost, entries, ids: entries.map(({ id }) => id) }
}
const log = async () =>
  (await wall.ask(`GET /api/meetings/${meeting}/entries`)).body as { entries: { id: string }[] }

test('Y1 the captain takes one in and leaves the other aside; the tray keeps both, marked', async () => {
  const { lost, entries, ids } = await lostTablet(2)
  const [first = '', second = ''] = ids
  const body = { meeting, device: lost.id }
  const taken = await captain.ask('POST /api/tray/take-in', { body: { ...body, entries: [first] } })
  expect(taken.body).toMatchObject({
    results: [{ outcome: 'recorded', id: first, role: 'pitWall' }],
  })
  const left = await captain.ask('POST /api/tray/leave-aside', {
    body: { ...body, entries: [first, second] },
  })
  expect(left.body).toEqual({ left: [second] })
  const { lines } = (await captain.ask('GET /api/tray')).body as { lines: TrayLine[] }
  const ofIt = lines.filter(({ device }) => device === lost.id)
  expect(ofIt.map(({ decided }) => decided?.what).sort()).toEqual(['leftAside', 'takenIn'])
  expect(ofIt[0]?.name).toBe('A pitWall’s device')
  const inLog = (await log()).entries.filter(({ id }) => ids.includes(id))
  expect(inLog).toMatchObject([entries[0]])
})

test('Y2 what is taken in reaches every screen as a push', async () => {
  const socket = wall.socket()
  await socket.emitWithAck('hello', { protocol: 1, meeting, after: 0 })
  const pushed = new Promise((resolve) => socket.once('push', resolve))
  const { lost, ids, entries } = await lostTablet(1)
  await captain.ask('POST /api/tray/take-in', { body: { meeting, device: lost.id, entries: ids } })
  expect(await pushed).toMatchObject({ meeting, entries })
})

test('Y3 only a captain decides, and on something', async () => {
  const { lost, ids } = await lostTablet(1)
  const body = { meeting, device: lost.id, entries: ids }
  for (const way of ['take-in', 'leave-aside']) {
    const path = `POST /api/tray/${way}`
    expect(refusalOf(await wall.ask(path, { body }))).toBe('403 roleMayNot')
    expect(refusalOf(await lost.ask(path, { body }))).toBe('403 revoked')
    expect(refusalOf(await bench.ask(path, { body }))).toBe('401 notJoined')
    const none = { ...body, entries: [] }
    expect(refusalOf(await captain.ask(path, { body: none }))).toBe('400 malformedRequest')
  }
  expect((await log()).entries.filter(({ id }) => ids.includes(id))).toEqual([])
})

test('Y4 an entry for a meeting that is not the team’s says why it cannot be taken in', async () => {
  const lost = await bench.device('pitWall')
  await captain.ask(`PATCH /api/devices/${lost.id}`, { body: { revoked: true } })
  const [nowhere, entry] = [uuidV7(), lost.entry()]
  const body = { meeting: nowhere, entries: [entry] }
  await lost.ask(`POST /api/meetings/${nowhere}/entries`, { body })
  const decide = { meeting: nowhere, device: lost.id, entries: [entry.id] }
  expect((await captain.ask('POST /api/tray/take-in', { body: decide })).body).toEqual({
    results: [{ outcome: 'refused', id: entry.id, refusal: 'otherMeeting' }],
  })
})
