import { PROTOCOL_VERSION } from '@pitlamp/contract'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'

const TOKEN = '0123456789abcdef'
let bench: AppBench
let captain: BenchDevice
beforeAll(async () => {
  bench = await openBench({ metricsToken: TOKEN })
  captain = await bench.device('captain')
})
afterAll(() => bench.close())

const scrape = () => bench.ask('GET /metrics', { headers: { authorization: `Bearer ${TOKEN}` } })
const valueOf = (text: string, name: string) =>
  Number(
    text
      .split('\n')
      .find((line) => line.startsWith(`${name} `))
      ?.slice(name.length),
  )

test('M1 without the token, or with another, there is nothing at the address', async () => {
  const bare = await openBench()
  const headers = { authorization: `Bearer ${TOKEN}` }
  for (const answer of [
    await bench.ask('GET /metrics'),
    await bench.ask('GET /metrics', { headers: { authorization: `Bearer ${TOKEN}.` } }),
    await bench.ask('GET /metrics', { headers: { authorization: TOKEN } }),
    await captain.ask('GET /metrics'),
    await bare.ask('GET /metrics', { headers }),
  ]) {
    expect(refusalOf(answer)).toBe('404 notFound')
  }
  await bare.close()
})

test('M2 the figures are Prometheus text, those of the process among them', async () => {
  const { status, type, body } = await scrape()
  expect([status, type]).toEqual([200, 'text/plain; version=0.0.4; charset=utf-8'])
  for (const name of ['process_cpu_seconds_total', 'nodejs_eventloop_lag_p99_seconds']) {
    expect(valueOf(body as string, name), name).toBeGreaterThanOrEqual(0)
  }
})

test('M3 what is recorded, refused, connected and told is counted', async () => {
  const meeting = await captain.meeting()
  const socket = captain.socket()
  await socket.emitWithAck('hello', { protocol: PROTOCOL_VERSION, meeting, after: 0 })
  const told = new Promise((resolve) => socket.once('push', resolve))
  const entry = captain.entry()
  await socket.emitWithAck('append', { meeting, entries: [entry, captain.entry()] })
  await told
  await socket.emitWithAck('append', { meeting, entries: [entry, { ...entry, kind: 'nothing' }] })
  await socket.emitWithAck('append', 'nonsense' as never)
  const viewer = await bench.device('viewer')
  await viewer.ask('GET /api/tray')
  const text = (await scrape()).body as string
  const figures = {
    'pitlamp_entries_total{outcome="recorded"}': 2,
    'pitlamp_entries_total{outcome="duplicate"}': 1,
    'pitlamp_entries_total{outcome="refused"}': 1,
    'pitlamp_refused_total{what="entry",reason="malformed"}': 1,
    'pitlamp_refused_total{what="message",reason="malformedRequest"}': 1,
    'pitlamp_refused_total{what="request",reason="roleMayNot"}': 1,
    pitlamp_append_seconds_count: 2,
    pitlamp_news_lag_seconds_count: 1,
    pitlamp_sockets_open: 1,
    // The captain’s and the viewer’s.
    pitlamp_devices: 2,
    pitlamp_writing: 1,
    pitlamp_clock_in_doubt: 0,
  }
  const found = Object.keys(figures).map((name) => [name, valueOf(text, name)])
  expect(Object.fromEntries(found)).toEqual(figures)
})

/** Of the process: histogram bounds, kinds of handles, spaces of the heap, kinds of collection, Node's version. */
const OF_THE_LIBRARY = ['le', 'type', 'space', 'kind', 'version', 'major', 'minor', 'patch']

test('M4 no figure names a team, a device, a person or a meeting', async () => {
  const text = (await scrape()).body as string
  const labels = [...text.matchAll(/[{,](\w+)="/g)].map(([, label]) => label)
  expect(
    [...new Set(labels)].filter((label) => !OF_THE_LIBRARY.includes(label ?? '')).sort(),
  ).toEqual(['outcome', 'reason', 'what'])
  expect(text).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}/)
})
