import type { PlanLink, Problem, SharedPlan } from '@pitlamp/contract'
import Database from 'better-sqlite3'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openBench, refusalOf, type AppBench, type BenchDevice } from '../app-bench.ts'
import {
  adoptPlan,
  draftPlan,
  GREEN,
  HOUR,
  PEOPLE,
  PLACE,
  PLAN,
  saveDraft,
  SOLVI,
} from '../plan/plan-bench.ts'

let bench: AppBench
let captain: BenchDevice
let meeting: string
let nowMs: number
beforeEach(async () => {
  nowMs = GREEN - 8 * HOUR
  bench = await openBench({ clocks: { wall: () => nowMs, monotonic: () => nowMs } })
  captain = await bench.device('captain')
  meeting = await captain.meeting()
})
afterEach(() => bench.close())

const link = async (by = captain) =>
  (await by.ask(`POST /api/meetings/${meeting}/plan-link`)).body as PlanLink
const open = (code: string, person?: string) =>
  bench.ask('POST /api/plan', { body: { code, person } })
const planOf = async (code: string, person?: string) =>
  (await open(code, person)).body as SharedPlan

test('K1 whoever has the link sees the plan without a device, and nothing else', async () => {
  await draftPlan({ device: captain, meeting })
  const { code, links } = await link()
  // 128 bits in base64url: 22 characters.
  expect(code).toMatch(/^[\w-]{22}$/)
  expect(links).toEqual([`${bench.url}/plan#${code}`])
  const one = { segment: 'one' }
  const drives = { ...one, duty: 'controller' }
  expect((await open(code)).body).toEqual({
    meeting: { name: 'A meeting', place: PLACE, timeZone: 'Europe/Berlin' },
    asOf: GREEN - 8 * HOUR,
    adopted: false,
    people: [
      { id: PEOPLE.solvi, name: SOLVI },
      { id: PEOPLE.okello, name: 'Okello' },
      { id: PEOPLE.tamsin, name: 'Tamsin' },
    ],
    segments: [
      { id: 'one', startsAt: GREEN, endsAt: GREEN + 4 * HOUR },
      {
        ...{ id: 'two', name: 'Dämmerung, die zweite' },
        ...{ startsAt: GREEN + 4.5 * HOUR, endsAt: GREEN + 8.5 * HOUR },
      },
    ],
    spans: [
      { ...drives, id: 'd1', person: PEOPLE.solvi, ...from(0, 2.5), lane: 4 },
      { ...one, id: 'm1', person: PEOPLE.okello, duty: 'post', ...from(0, 2), post: '3' },
      { ...one, id: 'w1', person: PEOPLE.tamsin, duty: 'wall', ...from(0, 2) },
      { ...one, id: 'b1', person: PEOPLE.tamsin, duty: 'bench', ...from(2, 4) },
      { ...drives, id: 'd2', person: PEOPLE.okello, ...from(2.5, 4) },
      { ...drives, segment: 'two', id: 'd3', person: PEOPLE.solvi, ...from(4.5, 5.5) },
      { segment: 'two', id: 'o1', person: PEOPLE.tamsin, duty: 'offDuty', ...from(4.5, 8.5) },
    ],
    stops: [{ id: 'p1', ...one, at: GREEN + 2.5 * HOUR, mandatory: true, task: 'tyres' }],
  })
})

/** Meeting time from and to hours after green. */
function from(fromHours: number, toHours: number) {
  return { fromAt: GREEN + fromHours * HOUR, toAt: GREEN + toHours * HOUR }
}

test('K2 one person’s plan is that person’s spans; somebody unknown has none', async () => {
  await draftPlan({ device: captain, meeting })
  const { code } = await link()
  const { spans, people } = await planOf(code, PEOPLE.okello)
  expect([spans.map(({ id }) => id), people.length]).toEqual([['m1', 'd2'], 3])
  expect(refusalOf(await open(code, uuidV7()))).toBe('404 notFound')
})

test('K3 a meeting without documents has an empty plan, and a draft that does not fit is none', async () => {
  const { code } = await link()
  const nothing = {
    ...{ meeting: { name: 'A meeting', timeZone: 'UTC' }, adopted: false },
    ...{ people: [], segments: [], spans: [], stops: [] },
  }
  expect(await planOf(code)).toMatchObject(nothing)
  const draft = { document: 'plan', basedOn: 0, content: { spans: 'many' } }
  await saveDraft({ device: captain, meeting }, draft)
  expect(await planOf(code)).toMatchObject(nothing)
})

test('K4 the adopted plan holds, whatever the draft says meanwhile, from when it applies', async () => {
  await draftPlan({ device: captain, meeting })
  const { code } = await link()
  const [first, ...rest] = PLAN.spans
  await adoptPlan({ device: captain, meeting }, { content: { ...PLAN, spans: rest }, at: nowMs })
  const shown = async () => {
    const { adopted, spans } = await planOf(code)
    return [adopted, spans.map(({ id }) => id)]
  }
  expect(await shown()).toEqual([true, ['m1', 'w1', 'b1', 'd2', 'd3', 'o1']])
  const only = { ...PLAN, spans: first ? [first] : [] }
  await adoptPlan({ device: captain, meeting }, { content: only, at: nowMs + HOUR })
  expect(await shown()).toEqual([true, ['m1', 'w1', 'b1', 'd2', 'd3', 'o1']])
  nowMs += HOUR
  expect(await shown()).toEqual([true, ['d1']])
})

test('K5 a time zone nobody knows is shown as UTC', async () => {
  const rules = { name: 'Rules', timeZone: 'Europe/Nowhere', programme: [], rules: [] }
  const draft = { document: 'rules', basedOn: 0, content: rules }
  await saveDraft({ device: captain, meeting }, draft)
  expect((await planOf((await link()).code)).meeting.timeZone).toBe('UTC')
})

test('K6 another link leaves the first one as it is; all of them are revoked together', async () => {
  const [first, second] = [await link(), await link()]
  const statuses = async () => [(await open(first.code)).status, (await open(second.code)).status]
  expect(await statuses()).toEqual([200, 200])
  const revoke = await captain.ask(`DELETE /api/meetings/${meeting}/plan-link`)
  expect(revoke.body).toEqual({ revoked: 2 })
  expect(await statuses()).toEqual([403, 403])
  expect(refusalOf(await open(first.code))).toBe('403 codeUnknown')
  const { code } = await link()
  expect((await open(code)).status).toBe(200)
})

test('K7 after five wrong codes an address waits ten minutes; joining is counted apart', async () => {
  const { code } = await link()
  const invite = { role: 'crew', as: 'typed' }
  const typed = (await captain.ask('POST /api/invites', { body: invite })).body as PlanLink
  const calendar = { body: { code: 'not-a-code' } }
  expect(refusalOf(await bench.ask('POST /api/plan/calendar', calendar))).toBe('403 codeUnknown')
  for (let wrong = 1; wrong < 5; wrong += 1) {
    expect(refusalOf(await open('not-a-code'))).toBe('403 codeUnknown')
  }
  const waits = await open(code)
  expect(refusalOf(waits)).toBe('429 tooManyTries')
  expect((waits.body as Problem).detail).toBe(
    'An old link does not open: ask the captain for a new one.',
  )
  const phone = { code: typed.code, device: uuidV7(), name: 'A phone' }
  expect((await bench.ask('POST /api/join', { body: phone })).status).toBe(200)
  expect(refusalOf(await open(code))).toBe('429 tooManyTries')
  nowMs += 600_000
  expect((await open(code)).status).toBe(200)
})

test('K8 a link that opens does not forgive wrong codes of joining', async () => {
  const { code } = await link()
  const join = () => {
    const body = { code: 'AAAA3333', device: uuidV7(), name: 'A phone' }
    return bench.ask('POST /api/join', { body })
  }
  for (let wrong = 0; wrong < 5; wrong += 1) await join()
  expect((await open(code)).status).toBe(200)
  expect(refusalOf(await join())).toBe('429 tooManyTries')
})

test('K9 only a captain makes and revokes links, and only to the team’s own meetings', async () => {
  const path = `/api/meetings/${meeting}/plan-link`
  const wall = await bench.device('pitWall')
  const theirs = `/api/meetings/${meetingOfAnotherTeam()}`
  const refusals = await Promise.all([
    wall.ask(`POST ${path}`),
    wall.ask(`DELETE ${path}`),
    bench.ask(`POST ${path}`),
    captain.ask(`POST ${theirs}/plan-link`),
    captain.ask(`DELETE ${theirs}/plan-link`),
    captain.ask(`GET ${theirs}/calendar.ics`),
    captain.ask(`GET ${theirs}/documents/plan/versions`),
  ])
  expect(refusals.map(refusalOf)).toEqual([
    ...['403 roleMayNot', '403 roleMayNot', '401 notJoined'],
    ...Array<string>(4).fill('404 otherMeeting'),
  ])
})

function meetingOfAnotherTeam(): string {
  const [team, id] = [uuidV7(), uuidV7()]
  const file = new Database(join(bench.house.deps.data, 'pitlamp.db'))
  file.prepare('insert into team values (?, ?, 0)').run(team, 'Another team')
  file.prepare("insert into meeting values (?, ?, 'Theirs', null, 0, 0, 0, 1, 0, 0)").run(id, team)
  file.close()
  return id
}

test('K10 the code is kept as a hash only', async () => {
  const { code } = await link()
  await open(code)
  const { data } = bench.house.deps
  const files = readdirSync(data).filter((name) => statSync(join(data, name)).isFile())
  const kept = files.map((name) => readFileSync(join(data, name), 'latin1')).join('')
  expect(kept).toContain('plan_link')
  expect(kept).not.toContain(code)
})

test('K11 the calendar file is for every device of the team, and for whoever has the link', async () => {
  await draftPlan({ device: captain, meeting })
  const { code } = await link()
  const viewer = await bench.device('viewer')
  const address = `/api/meetings/${meeting}/calendar.ics`
  const own = await viewer.ask(`GET ${address}?person=${PEOPLE.okello}`)
  expect([own.status, own.type]).toEqual([200, 'text/calendar; charset=utf-8'])
  expect((own.body as string).match(/BEGIN:VEVENT/g)).toHaveLength(2)
  const body = { code, person: PEOPLE.okello }
  expect((await bench.ask('POST /api/plan/calendar', { body })).body).toBe(own.body)
  const all = (await viewer.ask(`GET ${address}`)).body
  expect((await bench.ask('POST /api/plan/calendar', { body: { code } })).body).toBe(all)
  // Six duties; off duty is none.
  expect((all as string).match(/BEGIN:VEVENT/g)).toHaveLength(6)
  expect(refusalOf(await bench.ask(`GET ${address}`))).toBe('401 notJoined')
  const unknown = await viewer.ask(`GET ${address}?person=${uuidV7()}`)
  expect(refusalOf(unknown)).toBe('404 notFound')
})
