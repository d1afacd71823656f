/**
 * What one process wrote, as another over the same database hears it.
 * G7  Entries come whole and in order, however many are written at once.
 * G8  Of what is longer than can be said, it hears how far the log has come.
 * G9  Whatever else is said on the channel is not heard, and harms nobody.
 */
import pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { anEntry, joined, meetingOf, type JoinedDevice } from '../contract-bench.ts'
import type { News, Storage } from '../port.ts'
import { CHANNEL, heardIn } from './bus.ts'
import { openPostgres } from './open.ts'
import { startPostgres, type TestingPostgres } from './testing-postgres.ts'

const PATIENCE_MS = 120_000

let server: TestingPostgres
let url: string
let one: Storage
let other: Storage
let device: JoinedDevice
let n = 0

beforeAll(async () => {
  server = await startPostgres()
  url = await server.database()
  ;[one, other] = [await openPostgres({ url }), await openPostgres({ url })]
  const reopen = () => Promise.reject(new Error('Open it again yourself.'))
  device = await joined({ storage: one, reopen, close: () => one.close() }, { role: 'pitWall' })
}, PATIENCE_MS)
afterAll(async () => {
  await Promise.all([one.close(), other.close()])
  await server.stop()
})

const newsTo = (storage: Storage) => {
  const news: News[] = []
  storage.onNews((one) => news.push(one))
  return news
}
const aMeeting = () => meetingOf(device.bench, device.team)
const write = (meeting: string, where: string) => {
  const body = JSON.stringify({ what: 'deSlot', where })
  const entries = [anEntry({ device: device.id, n: ++n, body })]
  return one.run('append', { ...device.sends, meeting, entries })
}

test('G7 what is written to many meetings at once is heard whole and in order', async () => {
  const meetings: string[] = []
  while (meetings.length < 7) meetings.push(await aMeeting())
  const [own, told] = [newsTo(one), newsTo(other)]
  // Three times 3,000 bytes are more than PostgreSQL takes at once.
  await Promise.all(meetings.map((meeting) => write(meeting, 'x'.repeat(3_000))))
  expect(own.map(({ meeting, to, entries }) => [meeting, to, entries.length])).toEqual(
    meetings.map((meeting) => [meeting, 1, 1]),
  )
  await expect.poll(() => told).toEqual(own)
})

test('G8 of what is too long to be said the other hears how far the log has come', async () => {
  const meeting = await aMeeting()
  const [own, told] = [newsTo(one), newsTo(other)]
  // “é” is two bytes: 6,000 fit beside the envelope, 8,000 do not.
  await write(meeting, 'é'.repeat(3_000))
  await write(meeting, 'é'.repeat(4_000))
  await expect.poll(() => told).toEqual([own[0], { meeting, from: 2, to: 2, entries: [] }])
  expect(own).toMatchObject([
    { from: 0, to: 1, entries: [{ seq: 1 }] },
    { from: 1, to: 2, entries: [{ seq: 2 }] },
  ])
})

test('G8 of more entries than can be said the other hears how far the log has come', async () => {
  const meeting = await aMeeting()
  const told = newsTo(other)
  const entries = Array.from({ length: 50 }, () => anEntry({ device: device.id, n: ++n }))
  await one.run('append', { ...device.sends, meeting, entries })
  await expect.poll(() => told).toEqual([{ meeting, from: 50, to: 50, entries: [] }])
})

test.each(['1', 'null', '{}', 'no JSON', '"x"', '[]', '{"say":"more"}', '{"say":"presence"}'])(
  'G9 of %s nothing is heard, and what is said beside it is',
  (foreign) => {
    expect(heardIn(foreign)).toEqual([])
    const among = foreign === 'no JSON' ? [] : [{ say: 'clock' }]
    expect(heardIn(`${foreign},{"say":"clock"}`)).toEqual(among)
  },
)

test('G9 news whose entries nobody could have recorded are not heard', () => {
  const meeting = '01999999-0000-7000-8000-000000000001'
  const entry = { ...anEntry({ device: meeting, n: 1 }), seq: 1, recordedAt: 5, role: 'crew' }
  const news = { meeting, from: 0, to: 1, entries: [entry] }
  expect(heardIn(JSON.stringify(news))).toEqual([news])
  // The end of `timeMs` is 8.64 × 10¹² ms.
  const bad = { ...news, entries: [{ ...entry, recordedAt: 8_640_000_000_001 }] }
  expect(heardIn(JSON.stringify(bad))).toEqual([])
})

test('G9 whoever speaks another language on the channel ends no process', async () => {
  const told = newsTo(other)
  const stranger = new pg.Client({ connectionString: url })
  await stranger.connect()
  for (const foreign of ['1', 'null', '{}', 'no JSON']) {
    await stranger.query('select pg_notify($1, $2)', [CHANNEL, foreign])
  }
  await stranger.end()
  const meeting = await aMeeting()
  await write(meeting, 'x')
  await expect.poll(() => told).toMatchObject([{ meeting, from: 0, to: 1 }])
})
