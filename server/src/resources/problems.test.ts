import type { Problem } from '@pitlamp/contract'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { v7 as uuidV7 } from 'uuid'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'

let bench: AppBench
let captain: BenchDevice
beforeAll(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
})
afterAll(() => bench.close())

test('P1 an address that does not exist is a problem', async () => {
  expect(refusalOf(await captain.ask('GET /api/nothing'))).toBe('404 notFound')
  expect(refusalOf(await captain.ask('DELETE /api/meetings'))).toBe('404 notFound')
  expect(refusalOf(await captain.ask('GET /nothing.js'))).toBe('404 notFound')
})

test('P2 a body that does not fit is a problem that names the place', async () => {
  const answer = await captain.ask('POST /api/meetings', { body: { id: uuidV7(), name: '' } })
  expect(refusalOf(answer)).toBe('400 malformedRequest')
  expect((answer.body as Problem).detail).toMatch(/^name: /)
})

test('P3 a body that is too large is a problem', async () => {
  const body = { id: uuidV7(), name: 'x'.repeat(70_000) }
  expect(refusalOf(await captain.ask('POST /api/meetings', { body }))).toBe('413 tooLarge')
})

test('P4 a name that is not ours, or a page of another site, is not answered', async () => {
  const answers = await Promise.all([
    captain.ask('GET /api/me', { headers: { origin: 'http://elsewhere.example' } }),
    captain.ask('GET /healthz', { headers: { origin: 'null' } }),
    captain.ask('GET /api/me', { headers: { origin: bench.url } }),
  ])
  expect(answers.map(({ status }) => status)).toEqual([403, 403, 200])
  expect(answers.slice(0, 2).map(refusalOf)).toEqual(['403 wrongOrigin', '403 wrongOrigin'])
})

test('P5 a stale draft is answered with both versions, and nothing is overwritten', async () => {
  const path = `/api/meetings/${await captain.meeting()}/documents/rules`
  const save = (basedOn: number, content: unknown) =>
    captain.ask(`PUT ${path}`, { body: { basedOn, content } })
  expect((await captain.ask(`GET ${path}`)).body).toEqual({ document: 'rules', version: 0 })
  expect((await save(0, 'first')).body).toMatchObject({ version: 1, content: 'first' })
  const stale = await save(0, 'second')
  expect(refusalOf(stale)).toBe('409 staleDocument')
  expect(stale.body).toMatchObject({
    current: { version: 1, content: 'first' },
    yours: { basedOn: 0, content: 'second' },
  })
  expect((await captain.ask(`GET ${path}`)).body).toMatchObject({ content: 'first' })
  expect(refusalOf(await captain.ask(`GET ${path}s`))).toBe('400 malformedRequest')
})

test('P6 only a captain saves drafts, names people, makes meetings, sees devices and sets the clock', async () => {
  const wall = await bench.device('pitWall')
  const path = `/api/meetings/${await captain.meeting()}/documents/rules`
  const refusals = await Promise.all([
    wall.ask(`PUT ${path}`, { body: { basedOn: 0, content: 1 } }),
    wall.ask('POST /api/people', { body: { id: uuidV7(), name: 'Jo' } }),
    wall.ask('POST /api/meetings', { body: { id: uuidV7(), name: 'Another' } }),
    wall.ask('GET /api/devices'),
    wall.ask('POST /api/clock/settle', { body: { epoch: 1, shiftMs: 0 } }),
    wall.ask('POST /api/demo', { body: {} }),
  ])
  expect(refusals.map(refusalOf)).toEqual(refusals.map(() => '403 roleMayNot'))
  expect((await wall.ask('GET /api/people')).body).toEqual({ people: [] })
})

test('P7 a server without a simulator says that it has no demo', async () => {
  expect(refusalOf(await captain.ask('POST /api/demo', { body: {} }))).toBe('404 notFound')
})

test('P8 a device that asks too much has to wait; health checks and screens do not count', async () => {
  const busy = await bench.device('viewer')
  const me = { url: '/api/me', headers: { cookie: busy.cookie, host: 'localhost' } }
  const inject = () => bench.house.app.http.inject(me)
  for (let asked = 0; asked < 600; asked += 100) {
    const answers = await Promise.all(Array.from({ length: 100 }, inject))
    expect(answers.every(({ statusCode }) => statusCode === 200)).toBe(true)
  }
  expect(refusalOf(await busy.ask('GET /api/me'))).toBe('429 tooManyRequests')
  expect((await busy.ask('GET /healthz')).body).toEqual({ alive: true })
  expect((await busy.ask('GET /readyz')).body).toEqual({ ready: true, clock: 'set' })
  expect((await captain.ask('GET /api/me')).status).toBe(200)
})
