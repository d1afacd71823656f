/**
 * G1  Every route and every socket event stands in the table, and nothing else does.
 * G2  Each lets in whom the table says, role by role; nobody, and devices that were taken out, as it says.
 * G3  A captain of one team who names what another has sees none of it and changes none of it.
 * G4  Screens hear of their own team only.
 */
import {
  problem,
  type Answer,
  type Hello,
  type Problem,
  type ScreenToServer,
  type Welcome,
} from '@pitlamp/contract'
import { ROLES } from '@pitlamp/race'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { io } from 'socket.io-client'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  openBench,
  type Answered,
  type AppBench,
  type BenchDevice,
  type BenchSocket,
} from '../app-bench.ts'
import type { OpenDemo } from '../deps.ts'
import { openDemo as simulate } from '../simulator/demo.ts'
import { EVENTS, ROUTES, type Named, type WayIn } from './every-way-in.ts'
import { makeTeam, rowsOf, type Team } from './two-teams.ts'

let web: string
const ends: (() => void)[] = []
const openDemo: OpenDemo = async (at) => {
  const race = await simulate(at)
  ends.push(race.stop)
  return race
}
beforeAll(() => {
  web = mkdtempSync(join(tmpdir(), 'pitlamp-web-'))
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>Screens</title>')
})
afterAll(() => rmSync(web, { recursive: true }))

/** With everything that a setting can add. */
const openWhole = () => openBench({ web, httpsPort: 0, openDemo, metricsToken: '0123456789abcdef' })
const close = async (bench: AppBench) => {
  for (const end of ends.splice(0)) end()
  await bench.close()
}

/** What is listened to on a connection that no screen can say. */
const OF_THE_LIBRARY = ['disconnect', 'error']
const routes = Object.entries(ROUTES)
const events = Object.entries(EVENTS) as [keyof ScreenToServer, (typeof EVENTS)['hello']][]

/** The request with its places filled in, what it says, and what came back. */
async function ask(by: Pick<BenchDevice, 'ask'>, [route, way]: [string, WayIn], of: Named) {
  const places = way.at?.(of) ?? {}
  const path = route.replaceAll(/:(\w+)/g, (_, place: string) => places[place] ?? place)
  const body = way.body?.(of)
  const answer = await by.ask(path.replace('*', ''), { ...(body !== undefined && { body }) })
  return { answer, said: `${path} ${JSON.stringify(body ?? '')}` }
}

/** `200`, or with the refusal of the answer or of the entry in it. */
function outcomeOf({ status, body }: Pick<Answered, 'status' | 'body'>): string {
  const { refusal, results } = (body ?? {}) as Partial<Problem> & {
    readonly results?: readonly { readonly refusal?: string }[]
  }
  return `${String(status)} ${refusal ?? results?.[0]?.refusal ?? ''}`.trim()
}

const NOT_LET_IN = ['401 notJoined', '403 revoked', '403 roleMayNot']
/** Why it was not let in; undefined where it was, whatever came of it then. */
const turnedAway = (answer: Answered) => NOT_LET_IN.find((why) => why === outcomeOf(answer))

function connected(device: Pick<BenchDevice, 'socket'>): Promise<BenchSocket> {
  const socket = device.socket()
  return new Promise((resolve, reject) =>
    socket.once('connect', () => resolve(socket)).once('connect_error', reject),
  )
}

/** The refusal that comes back for an event, or nothing. */
async function say(socket: BenchSocket, event: keyof ScreenToServer, of: Named): Promise<string> {
  const message = EVENTS[event].says(of)
  if (!EVENTS[event].answered) {
    socket.emit(event as 'report', message as never)
    return ''
  }
  const answer = (await socket.emitWithAck(event as 'hello', message as never)) as Answer<object>
  if ('problem' in answer) return answer.problem.refusal
  return outcomeOf({ status: 0, body: 'ok' in answer ? answer.ok : answer }).slice(2)
}

const eventsIn = (heard: readonly string[]) =>
  [...new Set(heard.map((line) => (JSON.parse(line) as string[])[0]))].sort()

describe('one team', () => {
  let bench: AppBench
  let team: Team
  beforeAll(async () => {
    bench = await openWhole()
    team = await makeTeam(bench, 'Our team')
  })
  afterAll(() => close(bench))

  test('G1 every route stands in the table', () => {
    expect([...new Set(bench.house.app.routes)].sort()).toEqual(Object.keys(ROUTES).sort())
  })

  test('G1 every socket event stands in the table', async () => {
    const socket = await connected(team.captain)
    const heard = bench.house.app.sockets.standing().events
    expect(heard.filter((event) => !OF_THE_LIBRARY.includes(event)).sort()).toEqual(
      Object.keys(EVENTS).sort(),
    )
    socket.close()
  })

  test.each(routes)('G2 %s', async (route, way) => {
    const { who } = way
    // Who is let in by a code is another matter: a device that joins anew is another device.
    const codes = { join: 'a code that nobody was given', plan: 'nor this one' }
    const by = async (device: BenchDevice) =>
      turnedAway((await ask(device, [route, way], { ...team.named(device), codes })).answer)
    const nobody = await ask(bench, [route, way], { ...team.named(team.captain), codes })
    expect(turnedAway(nobody.answer)).toBe(who === 'anyone' ? undefined : '401 notJoined')
    const free = who === 'anyone' || who === 'sender'
    if (who !== 'sender') {
      expect(await by(team.revoked)).toBe(free ? undefined : '403 revoked')
    }
    for (const role of ROLES) {
      const mayGoIn = free || who.includes(role)
      const why = await by(team.of(role))
      if (who === 'sender') continue
      expect(why, role).toBe(mayGoIn ? undefined : '403 roleMayNot')
    }
  })

  test('G2 no screen is connected for nobody, or for a device that was taken out', async () => {
    const nobody = io(bench.url, { transports: ['websocket'], reconnection: false })
    await expect(connected({ socket: () => nobody })).rejects.toMatchObject({
      data: problem('notJoined'),
    })
    await expect(connected(team.revoked)).rejects.toMatchObject({ data: problem('revoked') })
  })

  test.each(events)('G2 %s', async (event, { who }) => {
    for (const role of ROLES) {
      const device = team.of(role)
      const refusal = await say(await connected(device), event, team.named(device))
      expect(refusal, role).toBe(who.includes(role) ? '' : 'roleMayNot')
    }
  })
})

describe('two teams', () => {
  let bench: AppBench
  let ours: Team
  let theirs: Team
  /** Theirs, but what is named is ours. */
  let naming: Named
  beforeAll(async () => {
    bench = await openWhole()
    ours = await makeTeam(bench, 'Lamplighters')
    theirs = await makeTeam(bench, 'Night Shift')
    const { codes, entry } = theirs.named(theirs.captain)
    naming = { ...ours.named(theirs.captain), codes, entry }
  })
  afterAll(() => close(bench))

  test.each(routes)('G3 %s', async (route, way) => {
    const before = rowsOf(bench, ours.captain.team)
    const { answer, said } = await ask(theirs.captain, [route, way], naming)
    expect(outcomeOf(answer)).toBe(way.stranger)
    const text = JSON.stringify([answer.body, [...answer.headers]])
    expect(ours.marks.filter((mark) => text.includes(mark) && !said.includes(mark))).toEqual([])
    expect(rowsOf(bench, ours.captain.team)).toBe(before)
  })

  test.each(events)('G3 %s', async (event, { stranger }) => {
    const before = rowsOf(bench, ours.captain.team)
    const socket = await connected(theirs.of('pitWall'))
    const entry = () => theirs.of('pitWall').entry()
    expect(await say(socket, event, { ...naming, entry })).toBe(stranger)
    expect(rowsOf(bench, ours.captain.team)).toBe(before)
    socket.close()
  })

  test('G3 what their devices reckon moves no clock that is ours too', async () => {
    const { captain } = theirs
    const socket = await connected(captain)
    const reckoned = { serverMs: 1, boundMs: 1, epoch: 9 }
    const hello = EVENTS.hello.says(theirs.named(captain)) as Hello
    const { ok } = (await socket.emitWithAck('hello', { ...hello, reckoned })) as { ok: Welcome }
    expect(ok.clock).toEqual({ epoch: 1, serverMs: ok.clock.serverMs })
  })

  test('G4 what happens in one team is told to its screens and to no others', async () => {
    const heard: Record<'ours' | 'theirs', string[]> = { ours: [], theirs: [] }
    const listening = async (to: keyof typeof heard, device: BenchDevice, of: Named) => {
      const socket = await connected(device)
      socket.onAny((...message: unknown[]) => heard[to].push(JSON.stringify(message)))
      expect(await say(socket, 'hello', of)).toBe('')
      return socket
    }
    const crew = ours.wall
    const named = ours.named(crew)
    const screens = [
      await listening('ours', crew, named),
      await listening('theirs', theirs.captain, theirs.named(theirs.captain)),
    ]
    screens[0]?.emit('report', EVENTS.report.says(named) as never)
    await ours.captain.ask(`POST /api/meetings/${named.meeting}/entries`, {
      body: { meeting: named.meeting, entries: [ours.captain.entry()] },
    })
    await ours.captain.ask(`PATCH /api/devices/${crew.id}`, { body: { name: 'Lamp phone' } })
    await expect.poll(() => eventsIn(heard.ours)).toEqual(['presence', 'push', 'role'])
    // Presence is told once a second.
    await expect.poll(() => eventsIn(heard.theirs), { timeout: 3_000 }).toEqual(['presence'])
    const said = heard.theirs.join()
    expect([...ours.marks, 'Lamp phone'].filter((mark) => said.includes(mark))).toEqual([])
  })

  test('G4 a device of the same id in another team is another device', async () => {
    const crew = ours.wall
    const socket = await connected(crew)
    let told = 0
    socket.onAny(() => (told += 1))
    // Theirs joined with the id of ours above.
    const taken = await theirs.captain.ask(`PATCH /api/devices/${crew.id}`, {
      body: { revoked: true },
    })
    expect(taken.status).toBe(200)
    expect((await crew.ask('GET /api/me')).body).toMatchObject({ device: { role: 'crew' } })
    expect([socket.connected, told]).toEqual([true, 0])
  })
})
