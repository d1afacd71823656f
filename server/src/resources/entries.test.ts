import { v7 as uuidV7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import {
  openBench,
  refusalOf,
  type Answered,
  type AppBench,
  type BenchDevice,
} from '../app-bench.ts'

interface Result {
  readonly outcome: string
  readonly refusal?: string
  readonly detail?: string
  readonly seq?: number
}

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

const send = (device: BenchDevice, entries: readonly unknown[], to = meeting) =>
  device.ask(`POST /api/meetings/${to}/entries`, { body: { meeting: to, entries } })
const outcomes = ({ body }: Answered) =>
  (body as { results: Result[] }).results.map(({ outcome, refusal }) => refusal ?? outcome)
const page = async (after: number) =>
  (await wall.ask(`GET /api/meetings/${meeting}/entries?after=${String(after)}`)).body as {
    from: number
    to: number
    last: number
    entries: { seq: number; body: string }[]
  }

test('E1 a press is saved and read again byte for byte', async () => {
  const entry = wall.entry({ kind: 'note.1', body: '{ "words" : "tyre \\u00e9" }' })
  expect(outcomes(await send(wall, [entry]))).toEqual(['recorded'])
  const { entries, last } = await page(0)
  expect(entries.at(-1)).toMatchObject({ ...entry, seq: last, role: 'pitWall' })
})

test('E2 a malformed entry refuses itself alone, and says what is wrong', async () => {
  const bad = [
    { ...wall.entry(), n: 0 },
    { ...wall.entry(), at: 1.5 },
    { ...wall.entry(), more: true },
    wall.entry({ kind: 'Not a kind' }),
    wall.entry({ body: 'no JSON' }),
    wall.entry({ kind: 'note.1', body: '{"wrong":1}' }),
    wall.entry({ kind: 'note.1', body: '{"words":"half \ud83c"}' }),
    null,
    'text',
  ]
  const answer = await send(wall, [...bad, wall.entry()])
  expect(answer.status).toBe(200)
  expect(outcomes(answer)).toEqual([...bad.map(() => 'malformed'), 'recorded'])
  const { results } = answer.body as { results: Result[] }
  expect(results[0]?.detail).toMatch(/^n: /)
})

test('E3 a body over its limit is refused for itself: 8 KiB, and 48 for what is adopted', async () => {
  const long = (bytes: number) =>
    JSON.stringify({ words: 'x'.repeat(bytes - '{"words":""}'.length) })
  const unknown = (bytes: number, kind = 'somethingLater.2') =>
    wall.entry({ kind, body: long(bytes) })
  expect(outcomes(await send(wall, [unknown(8192), unknown(8193)]))).toEqual([
    'recorded',
    'tooLarge',
  ])
  expect(
    outcomes(await send(captain, [captain.entry({ kind: 'adopted.9', body: long(49_152) })])),
  ).toEqual(['recorded'])
  const tooLong = captain.entry({ kind: 'adopted.9', body: long(49_153) })
  expect(outcomes(await send(captain, [tooLong]))).toEqual(['tooLarge'])
})

test('E4 what the role does not allow is refused, entry by entry', async () => {
  const viewer = await bench.device('viewer')
  const crew = await bench.device('crew')
  expect(outcomes(await send(viewer, [viewer.entry()]))).toEqual(['roleMayNot'])
  const incident = crew.entry({ kind: 'incident.1', body: '{"what":"deSlot"}' })
  expect(outcomes(await send(crew, [crew.entry(), incident]))).toEqual(['roleMayNot', 'recorded'])
})

test('E5 a meeting that is not the team’s takes nothing', async () => {
  expect(outcomes(await send(wall, [wall.entry()], uuidV7()))).toEqual(['otherMeeting'])
  const path = `GET /api/meetings/${uuidV7()}/entries`
  expect(refusalOf(await wall.ask(path))).toBe('404 otherMeeting')
  const mixed = { meeting: uuidV7(), entries: [wall.entry()] }
  const mixedUp = await wall.ask(`POST /api/meetings/${meeting}/entries`, { body: mixed })
  expect(refusalOf(mixedUp)).toBe('404 otherMeeting')
})

test('E6 an entry made by another device is not taken from this one', async () => {
  expect(outcomes(await send(wall, [captain.entry()]))).toEqual(['otherDevice'])
})

test('E7 the same id with another body is refused; with the same body it is success', async () => {
  const entry = wall.entry({ kind: 'note.1', body: '{"words":"one"}' })
  await send(wall, [entry])
  const other = { ...entry, body: '{"words":"two"}' }
  expect(outcomes(await send(wall, [entry, other]))).toEqual(['duplicate', 'otherBody'])
})

test('E8 a batch over 64 KiB is refused whole, and nothing of it is taken', async () => {
  const before = (await page(0)).last
  const body = JSON.stringify({ words: 'x'.repeat(1_900) })
  // 40 × 1.9 KiB and their envelopes: 86 KB.
  const entries = Array.from({ length: 40 }, () => wall.entry({ kind: 'note.1', body }))
  expect(refusalOf(await send(wall, entries))).toBe('413 batchTooLarge')
  const half = await send(wall, entries.slice(0, 20))
  expect(outcomes(half)).toEqual(entries.slice(0, 20).map(() => 'recorded'))
  expect((await page(before)).last).toBe(before + 20)
})

test('E9 a request over 1 MiB is refused before it is read', async () => {
  const entry = { ...wall.entry(), body: 'x'.repeat(1_100_000) }
  expect(refusalOf(await send(wall, [entry]))).toBe('413 batchTooLarge')
})

test('E10 what is no batch at all is a malformed request', async () => {
  const path = `POST /api/meetings/${meeting}/entries`
  const entries = Array.from({ length: 501 }, () => null)
  for (const body of [{}, { meeting, entries: [] }, { meeting, entries }, '{"half":']) {
    expect(refusalOf(await wall.ask(path, { body }))).toBe('400 malformedRequest')
  }
})

test('E11 catch-up comes in pages of 500, compressed, until `to` is `last`', async () => {
  const other = await captain.meeting()
  const entries = Array.from({ length: 502 }, () => captain.entry())
  for (let from = 0; from < 502; from += 100)
    await send(captain, entries.slice(from, from + 100), other)
  const get = (after: number) =>
    captain.ask(`GET /api/meetings/${other}/entries?after=${String(after)}`)
  const first = await get(0)
  expect(first.body).toMatchObject({ from: 0, to: 500, last: 502 })
  expect(first.headers.get('content-encoding')).toBe('gzip')
  expect((await get(500)).body).toMatchObject({ from: 500, to: 502, last: 502 })
  expect((await get(502)).body).toEqual({ from: 502, to: 502, last: 502, entries: [] })
  expect(refusalOf(await captain.ask(`GET /api/meetings/${other}/entries?after=-1`))).toBe(
    '400 malformedRequest',
  )
})

test('E12 a revoked device’s entries go to the captain’s tray', async () => {
  const lost = await bench.device('pitWall')
  const entry = lost.entry()
  const revoked = await captain.ask(`PATCH /api/devices/${lost.id}`, { body: { revoked: true } })
  expect(revoked.status).toBe(200)
  expect(outcomes(await send(lost, [entry]))).toEqual(['revoked'])
  expect(refusalOf(await lost.ask('GET /api/me'))).toBe('403 revoked')
  expect((await captain.ask('GET /api/tray')).body).toMatchObject({
    lines: [{ device: lost.id, meeting, entry }],
  })
  expect(refusalOf(await wall.ask('GET /api/tray'))).toBe('403 roleMayNot')
})
