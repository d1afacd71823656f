/**
 * Q1  A copy makes the meeting it is of: ids, numbers, times, roles and clock as they were. Brought in again it
 *     changes nothing.
 * Q2  What no server had is recorded in the order of each device's count, with the role its device had; what may not
 *     be is left, and said.
 * Q3  Where the meeting is here already nothing of it is changed: entries are added, screens hear of them, and another
 *     entry under the same id is left.
 * Q4  Planning goes on from what was adopted, or drafted since; people are known.
 * Q5  A copy that is broken anywhere, or too long, changes nothing.
 * Q6  Whoever is not the meeting's team's captain brings nothing in.
 */
import { COPY_LIMIT_BYTES, type BroughtIn, type Draft, type MeetingCopy } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'
import { anEntry } from '../storage/contract-bench.ts'

let bench: AppBench
let captain: BenchDevice
beforeAll(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
})
afterAll(() => bench.close())

const [tablet, phone] = [uuidV7(), uuidV7()]
const noted = (device: string, n: number, words = String(n)) =>
  anEntry({ device, n, kind: 'note.1', body: JSON.stringify({ words }) })
const inLog = (seq: number, entry: Entry): RecordedEntry => ({
  ...{ ...entry, seq, recordedAt: 1_000_000 + seq },
  role: entry.device === tablet ? 'pitWall' : 'crew',
})

function aCopy(more: Partial<MeetingCopy> = {}): MeetingCopy {
  return {
    ...{ pitlampCopy: 1, writtenAt: 2_000_000, asOf: 2_000_000 },
    device: { id: tablet, name: 'Wall tablet', role: 'pitWall' },
    meeting: {
      ...{ id: uuidV7(), name: 'Lantern Forty', fictional: false, createdAt: 7, lastSeq: 0 },
      clock: { anchorServerMs: 1_000, anchorMeetingMs: 900, rate: 1 },
    },
    ...{ devices: [], people: [], drafts: [], recorded: [], unsent: [] },
    ...more,
  }
}

const bring = (body: unknown, by: Pick<BenchDevice, 'ask'> = captain) =>
  by.ask('POST /api/copies', { body })
const brought = async (copy: MeetingCopy) => (await bring(copy)).body as BroughtIn
const logOf = async ({ meeting }: MeetingCopy) =>
  (
    (await captain.ask(`GET /api/meetings/${meeting.id}/entries`)).body as {
      entries: RecordedEntry[]
    }
  ).entries
const meetings = async () => (await captain.ask('GET /api/meetings')).body

test('Q1 makes the meeting with its ids, numbers, times and clock, and once only', async () => {
  const recorded = [
    inLog(1, noted(tablet, 1)),
    inLog(2, noted(phone, 1)),
    inLog(3, noted(tablet, 2)),
  ]
  const copy = aCopy({ recorded })
  const meeting = { ...copy.meeting, lastSeq: 3 }
  expect(await brought(copy)).toEqual({ meeting, recorded: 3, unsent: 0, already: 0, left: [] })
  expect(await logOf(copy)).toEqual(recorded)
  expect(await brought(copy)).toEqual({ meeting, recorded: 0, unsent: 0, already: 3, left: [] })
  expect(await logOf(copy)).toEqual(recorded)
  expect((await captain.ask(`GET /api/meetings/${meeting.id}`)).body).toEqual(meeting)
})

test('Q2 records what no server had, each device’s in order, and leaves what may not be', async () => {
  const mine = [noted(tablet, 2), noted(tablet, 3)]
  const [green, malformed, elsewhere] = [
    anEntry({ device: phone, n: 1, kind: 'green.1', body: '{"segment":"s1"}' }),
    anEntry({ device: tablet, n: 4, kind: 'note.1', body: '{"words":7}' }),
    noted(phone, 2),
  ]
  const refused = noted(tablet, 5)
  const copy = aCopy({
    recorded: [inLog(1, noted(tablet, 1))],
    unsent: [
      ...mine.map((entry) => ({ entry, role: 'pitWall' as const })),
      { entry: green, role: 'crew' },
      { entry: malformed, role: 'pitWall' },
      { entry: refused, role: 'pitWall', refused: 'roleMayNot' },
      { entry: elsewhere },
    ],
  })
  const { left, ...counted } = await brought(copy)
  expect(counted).toMatchObject({ recorded: 1, unsent: 3, already: 0 })
  expect(left.map(({ entry, refusal }) => [entry, refusal])).toEqual([
    [malformed.id, 'malformed'],
    [refused.id, 'roleMayNot'],
    [green.id, 'roleMayNot'],
  ])
  expect((await logOf(copy)).map(({ id, seq, role }) => [id, seq, role])).toEqual([
    [copy.recorded[0]?.id, 1, 'pitWall'],
    [mine[0]?.id, 2, 'pitWall'],
    [mine[1]?.id, 3, 'pitWall'],
    [elsewhere.id, 4, 'crew'],
  ])
})

test('Q3 adds to a meeting that is here, tells its screens, and changes nothing of it', async () => {
  const first = inLog(1, noted(tablet, 1))
  const copy = aCopy({ recorded: [first] })
  await bring(copy)
  const socket = captain.socket()
  await socket.emitWithAck('hello', { protocol: 1, meeting: copy.meeting.id, after: 0 })
  const pushed = new Promise((resolve) => socket.once('push', resolve))
  const late = inLog(2, noted(phone, 1))
  const other = { ...first, body: '{"words":"changed"}' }
  const unsent = [{ entry: noted(phone, 2), role: 'crew' as const }]
  const renamed = { ...copy.meeting, name: 'Another name' }
  const result = await brought({ ...copy, meeting: renamed, recorded: [other, late], unsent })
  expect(result).toMatchObject({
    ...{ recorded: 1, unsent: 1, already: 0 },
    left: [{ entry: first.id, refusal: 'otherBody' }],
    meeting: { name: 'Lantern Forty', lastSeq: 3 },
  })
  expect(await pushed).toMatchObject({ from: 1, to: 3, entries: [late, { seq: 3 }] })
  expect((await logOf(copy)).slice(0, 2)).toEqual([first, late])
})

test('Q4 planning goes on from what was adopted or drafted since, and people are known', async () => {
  const person = { id: uuidV7(), name: 'Ida Quill' }
  const adopts = (n: number, said: { document: string; version: number; content: unknown }) => {
    const body = { ...said, sha256: 'a'.repeat(64), appliesFrom: 1, as: 'change' }
    return inLog(n, anEntry({ device: tablet, n, kind: 'adopted.1', body: JSON.stringify(body) }))
  }
  const crew = { people: [{ ...person, duties: [] }] }
  const copy = aCopy({
    recorded: [
      adopts(1, { document: 'crew', version: 4, content: crew }),
      adopts(2, { document: 'plan', version: 2, content: { spans: [], stops: [] } }),
    ],
    drafts: [{ document: 'plan', version: 6, content: { newer: true }, savedAt: 5 }],
    people: [{ id: uuidV7(), name: 'Tom Wick' }],
  })
  await bring(copy)
  const draft = async (document: string) =>
    (await captain.ask(`GET /api/meetings/${copy.meeting.id}/documents/${document}`)).body as Draft
  expect(await draft('crew')).toMatchObject({ version: 4, content: crew })
  expect(await draft('plan')).toEqual({
    ...{ document: 'plan', version: 6, content: { newer: true }, savedAt: 5 },
  })
  expect(await draft('rules')).toEqual({ document: 'rules', version: 0 })
  const { people } = (await captain.ask('GET /api/people')).body as { people: { name: string }[] }
  expect(people.map(({ name }) => name)).toEqual(['Ida Quill', 'Tom Wick'])
  const save = { basedOn: 4, content: 'typed since' }
  await captain.ask(`PUT /api/meetings/${copy.meeting.id}/documents/crew`, { body: save })
  await bring(copy)
  expect(await draft('crew')).toMatchObject({ version: 5, content: 'typed since' })
})

test('Q4 what a device may not adopt lays nothing down', async () => {
  const content = { people: [{ id: uuidV7(), name: 'Ada Fenn', duties: [] }] }
  const said = { document: 'crew', version: 2, content, sha256: 'a'.repeat(64) }
  const body = JSON.stringify({ ...said, appliesFrom: 1, as: 'change' })
  const entry = anEntry({ device: phone, n: 1, kind: 'adopted.1', body })
  const copy = aCopy({ unsent: [{ entry, role: 'crew' }] })
  expect(await brought(copy)).toMatchObject({
    left: [{ entry: entry.id, refusal: 'roleMayNot' }],
  })
  const { body: draft } = await captain.ask(`GET /api/meetings/${copy.meeting.id}/documents/crew`)
  expect(draft).toEqual({ document: 'crew', version: 0 })
})

test('Q5 a copy that is broken anywhere, or too long, changes nothing', async () => {
  const before = await meetings()
  const good = inLog(1, noted(tablet, 1))
  const half = { ...good, id: uuidV7(), seq: 2, body: '"\uD800"' }
  const long = { ...good, id: uuidV7(), seq: 2, body: `"${'a'.repeat(9_000)}"` }
  for (const recorded of [
    [good, half],
    [good, long],
    [good, { ...good, n: 0 }],
  ]) {
    expect(refusalOf(await bring(aCopy({ recorded })))).toBe('400 malformedRequest')
  }
  // 1,000 times as fast since 1970 it is 56,000 years later now than any entry can say.
  const fast = { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1_000 }
  const meeting = { ...aCopy().meeting, fictional: true, clock: fast }
  expect(refusalOf(await bring(aCopy({ meeting })))).toBe('400 malformedRequest')
  expect(refusalOf(await bring({ ...aCopy(), pitlampCopy: 2 }))).toBe('400 malformedRequest')
  expect(refusalOf(await bring('{"pitlampCopy":1,'))).toBe('400 malformedRequest')
  const tooLong = await bring(`"${'a'.repeat(COPY_LIMIT_BYTES)}"`)
  expect(refusalOf(tooLong)).toBe('400 malformedRequest')
  expect(await meetings()).toEqual(before)
})

test('Q6 only a captain of the meeting’s team brings it in', async () => {
  const copy = aCopy({ recorded: [inLog(1, noted(tablet, 1))] })
  const wall = await bench.device('pitWall')
  expect(refusalOf(await bring(copy, wall))).toBe('403 roleMayNot')
  expect(refusalOf(await bring(copy, bench))).toBe('401 notJoined')
  await bring(copy)
  const stranger = await bench.device('captain', 'Night Shift')
  const more = { ...copy, recorded: [...copy.recorded, inLog(2, noted(phone, 1))] }
  expect(refusalOf(await bring(more, stranger))).toBe('404 otherMeeting')
  expect(await logOf(copy)).toEqual(copy.recorded)
})

test('Q1 says how far this server’s clock is behind the copy', async () => {
  const now = bench.house.deps.time.now()
  const clock = { anchorServerMs: 1_000, anchorMeetingMs: 900, rate: 1 }
  const hour = 3_600_000
  const ahead = aCopy({ asOf: Math.round(now - 100 + hour) })
  const { behindMs = 0 } = await brought({ ...ahead, meeting: { ...ahead.meeting, clock } })
  expect(behindMs).toBeGreaterThan(hour - 60_000)
  expect(behindMs).toBeLessThanOrEqual(hour)
})
