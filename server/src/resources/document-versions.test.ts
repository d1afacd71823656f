import type { Draft, DraftVersions } from '@pitlamp/contract'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { v7 as uuidV7 } from 'uuid'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'

let bench: AppBench
let captain: BenchDevice
let nowMs = Date.UTC(2030, 0, 1)
beforeAll(async () => {
  bench = await openBench({ clocks: { wall: () => nowMs, monotonic: () => nowMs } })
  captain = await bench.device('captain')
})
afterAll(() => bench.close())

const planOf = async () => `/api/meetings/${await captain.meeting()}/documents/plan`
const save = (path: string, basedOn: number) =>
  captain.ask(`PUT ${path}`, { body: { basedOn, content: { number: basedOn + 1 } } })

test('V1 versions are listed newest first, with when and by which device', async () => {
  const path = await planOf()
  const viewer = await bench.device('viewer')
  expect((await viewer.ask(`GET ${path}/versions`)).body).toEqual({ versions: [] })
  await save(path, 0)
  nowMs += 60_000
  await save(path, 1)
  const { versions } = (await viewer.ask(`GET ${path}/versions`)).body as DraftVersions
  expect(versions).toEqual([
    { version: 2, savedAt: nowMs, savedBy: 'A captain’s device' },
    { version: 1, savedAt: nowMs - 60_000, savedBy: 'A captain’s device' },
  ])
})

test('V2 a version that was kept is read as a draft, and brought back by saving its content', async () => {
  const path = await planOf()
  await save(path, 0)
  nowMs += 60_000
  await save(path, 1)
  const first = (await captain.ask(`GET ${path}/versions/1`)).body as Draft
  expect(first).toEqual({
    ...{ document: 'plan', version: 1, content: { number: 1 } },
    savedAt: nowMs - 60_000,
  })
  const back = await captain.ask(`PUT ${path}`, { body: { basedOn: 2, content: first.content } })
  expect(back.body).toMatchObject({ version: 3, content: { number: 1 } })
})

test('V3 what was not kept, is no version or belongs to no meeting of the team is a problem', async () => {
  const path = await planOf()
  await save(path, 0)
  nowMs += 1_000
  await save(path, 1)
  const refusals = await Promise.all([
    captain.ask(`GET ${path}/versions/1`),
    captain.ask(`GET ${path}/versions/first`),
    captain.ask(`GET /api/meetings/${uuidV7()}/documents/plan/versions`),
    captain.ask(`GET /api/meetings/${uuidV7()}/documents/plan/versions/1`),
    bench.ask(`GET ${path}/versions`),
  ])
  expect(refusals.map(refusalOf)).toEqual([
    ...['404 notFound', '400 malformedRequest', '404 otherMeeting', '404 otherMeeting'],
    '401 notJoined',
  ])
})
