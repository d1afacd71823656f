/**
 * The server is thrown away with all it had, and another machine is given what a screen has of the meeting.
 *
 * N1  The meeting there is the one that was: the same log to the number and millisecond, the same state, the same
 *     judgement of it, and countdowns that are right to within 100 ms.
 * N2  A device that comes back with a press it had not sent loses nothing and makes nothing double; no key of the old
 *     server opens anything.
 * N3  What a device has as saved and the copy has not comes back: its own from itself, what others recorded with a
 *     copy that is brought in later, into the meeting as it runs.
 */
import { rmSync } from 'node:fs'
import {
  broughtInSchema,
  meetingSchema,
  readCopy,
  writeCopy,
  type BroughtIn,
  type MeetingCopy,
} from '@pitlamp/contract'
import {
  fold,
  judge,
  raceTimeline,
  readEntry,
  segmentClock,
  stintClock,
  stopClock,
  type State,
} from '@pitlamp/race'
import { copyOf, cursor, mergeCopies } from '@pitlamp/sync'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { audit, wholeLog } from '../audit.ts'
import { join, joinAgain, type Device } from '../device.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { makeMeeting, pressTheRace, worst } from './race.ts'

/** Three servers and their screens, also on a busy machine. */
const TIME = { timeout: 120_000 }

let old: RunningServer
let captain: Device
let meeting: string
let wall: Screen
let phone: Screen
let greenAt: number
let fresh: RunningServer | undefined
const screens: Screen[] = []
beforeEach(async () => {
  old = await startServer()
  captain = await join(old.url, await old.captainCode(), 'Captain')
  meeting = await makeMeeting(captain)
  wall = await open(captain)
  phone = await open(await captain.invite('crew', 'Phone'))
  greenAt = await pressTheRace(wall)
  await level(phone, wall)
})
afterEach(async () => {
  for (const screen of screens.splice(0)) screen.close()
  await fresh?.stop()
  rmSync(old.data, { recursive: true, force: true })
})

it('N1 the meeting there is the one that was', TIME, async () => {
  const before = await wholeLog(captain, meeting)
  const copy = await copyBy(wall)
  const leader = await start()
  expect(await bring(leader, [copy])).toMatchObject({
    recorded: before.length,
    unsent: 0,
    left: [],
  })
  const after = await wholeLog(leader, meeting)
  expect(after).toEqual(before)
  expect(reckoned(stateOf(after))).toEqual(reckoned(stateOf(before)))
  expect(reckoned(stateOf(before)).judged.length).toBeGreaterThan(0)
  const screen = await open(leader)
  expect(screen.state()).toEqual(stateOf(before))
  expect(Math.max(...worst([screen], greenAt))).toBeLessThanOrEqual(100)
})

it('N2 a device that comes back with an unsent press loses nothing', TIME, async () => {
  phone.cutOff()
  const unsent = phone.press('faultNoted.1', { fault: 'Braid' })
  const copies = [await copyBy(wall), await copyBy(phone)]
  const leader = await start()
  await expect(phone.device.call('GET', '/api/me')).rejects.toThrow('has not joined')
  expect(await bring(leader, copies)).toMatchObject({ recorded: 8, unsent: 1 })
  const back = await comeBack(phone, leader)
  const press = back.press('faultNoted.1', { fault: 'Rear wing' })
  await back.until('its press to be saved', () => back.saved(press) === 'saved')
  const log = await wholeLog(leader, meeting)
  expect(log.filter(({ id }) => id === unsent.id)).toHaveLength(1)
  // Eight entries are the race, and the phone pressed twice.
  expect(audit(log, [wall, back])).toMatchObject({
    ...{ lost: 0, gaps: 0, twice: 0, unsent: 0 },
  })
  expect([log.length, back.sync.setAside]).toEqual([10, []])
})

it('N3 what the copy has not comes back from whoever has it', TIME, async () => {
  const copy = await copyBy(wall)
  const own = phone.press('faultNoted.1', { fault: 'Braid' })
  await phone.until('its press to be saved', () => phone.saved(own) === 'saved')
  const others = wall.press('incident.1', { what: 'deSlot' })
  await wall.until('its press to be saved', () => wall.saved(others) === 'saved')
  await level(phone, wall)
  const later = await copyBy(phone)
  const leader = await start()
  await bring(leader, [copy])
  const back = await comeBack(phone, leader)
  await back.until('its own to be there again', () => cursor(back.sync) === 9)
  expect(back.sync.setAside).toMatchObject([{ entry: others, why: 'notInServersLog' }])
  // Eight were in the first copy, and the ninth has come back by itself.
  expect(await bring(leader, [later])).toMatchObject({ recorded: 1, already: 9, left: [] })
  await back.until('nothing to be set aside', ({ sync }) => sync.setAside.length === 0)
  expect((await wholeLog(leader, meeting)).map(({ id }) => id).slice(8)).toEqual([
    own.id,
    others.id,
  ])
})

async function open(device: Device): Promise<Screen> {
  const screen = new Screen(device, meeting)
  screens.push(screen)
  return screen.live()
}

async function level(screen: Screen, with_: Screen): Promise<void> {
  await screen.until('the whole log', ({ sync }) => cursor(sync) === cursor(with_.sync))
}

/** As the screen writes it into its file, and as it is read from there. */
async function copyBy({ device, sync }: Screen): Promise<MeetingCopy> {
  const info = meetingSchema.parse(await captain.call('GET', `/api/meetings/${meeting}`))
  const { id, name, role } = device.me.device
  const now = Date.now()
  const about = { writtenAt: now, asOf: now, device: { id, name, role }, meeting: info }
  const written = writeCopy(copyOf(sync, { ...about, devices: [], people: [], drafts: [] }))
  const read = readCopy(written)
  if ('problem' in read) throw new Error(read.problem)
  return read.copy
}

/** Nothing is left of the old one; the new one is at its address. @returns its captain */
async function start(): Promise<Device> {
  await old.kill()
  rmSync(old.data, { recursive: true })
  fresh = await startServer({ port: old.port })
  return join(fresh.url, await fresh.captainCode(), 'Another laptop')
}

async function bring(leader: Device, copies: readonly MeetingCopy[]): Promise<BroughtIn> {
  const [merged] = mergeCopies(copies)
  return broughtInSchema.parse(await leader.call('POST', '/api/copies', merged?.copy))
}

/** With all it had kept, and a key of the new server's. */
async function comeBack(screen: Screen, leader: Device): Promise<Screen> {
  screen.close()
  const invited = await leader.call('POST', '/api/invites', { role: 'crew', as: 'typed' })
  const device = await joinAgain(screen.device, (invited as { readonly code: string }).code)
  const back = new Screen(device, meeting, screen.sync)
  screens.push(back)
  await back.live()
  await back.until('an empty outbox', ({ sync }) => sync.pending.length === 0)
  return back
}

function stateOf(log: Awaited<ReturnType<typeof wholeLog>>): State {
  return fold(log.map(readEntry))
}

/** Countdowns and judgement ten minutes after the green. */
function reckoned(state: State) {
  const now = greenAt + 600_000
  return {
    clocks: [segmentClock(state, now), stintClock(state, now), stopClock(state, now)],
    judged: judge(state, raceTimeline(state, now), now),
  }
}
