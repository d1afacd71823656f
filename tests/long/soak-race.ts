/** One race of the demo, watched by two screens that press, while viewers come and go. */
import { setTimeout as sleep } from 'node:timers/promises'
import { meetingSchema, type Meeting } from '@pitlamp/contract'
import { segmentClock } from '@pitlamp/race'
import { cursor } from '@pitlamp/sync'
import { DEMOS } from '../../server/src/simulator/demo.ts'
import { readScript } from '../../server/src/simulator/script.ts'
import { audit, wholeLog } from '../audit.ts'
import type { Device } from '../device.ts'
import { Screen } from '../screen.ts'

export interface Watchers {
  readonly wall: Device
  readonly phone: Device
  readonly viewers: readonly Device[]
}

export interface Watched {
  readonly pressed: number
  readonly acknowledged: number
  readonly lost: number
  readonly twice: number
  /** Presses of the script whose time had come, and that are not in the log. */
  readonly missing: number
  /** Of the two screens, those that hold another log than the server. */
  readonly differing: number
  readonly problems: number
  /** Viewers that came, and those of them that had the whole log and the time. */
  readonly expectedViews: number
  readonly views: number
  /** How far the two screens' segment clocks were apart at worst, in real ms; NaN where none ever ran. */
  readonly apartMs: number
}

interface Pace {
  readonly speed: number
  readonly until: number
}

const LOOK_EVERY_MS = 250
/** Every so many looks. */
const [PRESS_EVERY, VIEWER_EVERY] = [4, 8]
const VIEWER_STAYS_MS = 3_000
const LAST_ONES_WITHIN_REAL_MS = 10_000

/** Until its last press, or until the time is up. */
export async function watchRace(watchers: Watchers, { speed, until }: Pace): Promise<Watched> {
  const { wall: captain, phone: other, viewers } = watchers
  const meeting = meetingSchema.parse(await captain.call('POST', '/api/demo', { speed }))
  const due = dueIn(meeting)
  const wall = await new Screen(captain, meeting.id).live()
  const phone = await new Screen(other, meeting.id).live()
  const [apart, visits]: [number[], Promise<boolean>[]] = [[], []]
  for (let look = 0; performance.now() < until && wall.now() < due.lastAt; look += 1) {
    apart.push(...apartMs(wall, phone, speed))
    if (look % PRESS_EVERY === 0) pressSome(wall, phone, look)
    if (look % VIEWER_EVERY === 0)
      visits.push(visit(viewers[visits.length % viewers.length], meeting.id))
    await sleep(LOOK_EVERY_MS)
  }
  const seen = await Promise.all(visits)
  const wanted = due.by(wall.now())
  const missing = await missingOf(wanted, wall, phone)
  const watched = {
    ...(await auditOf(wall, phone)),
    missing,
    problems: wall.state().problems.length,
    expectedViews: seen.length,
    views: seen.filter(Boolean).length,
    apartMs: apart.length === 0 ? Number.NaN : Math.max(...apart),
  }
  wall.close()
  phone.close()
  return watched
}

/** What the script presses, in meeting time. */
function dueIn({ clock }: Meeting): { by: (now: number) => number; lastAt: number } {
  const { folder, openAtMs } = DEMOS.digital
  const { documents, presses } = readScript(folder)
  const greenAt = clock.anchorMeetingMs - openAtMs
  const at = presses.map(({ offsetMs }) => greenAt + offsetMs)
  return {
    by: (now) => documents.length + at.filter((moment) => moment <= now).length,
    lastAt: Math.max(...at),
  }
}

/** Nothing where one of them has entries that the other has not got yet, or no segment runs. */
function apartMs(wall: Screen, phone: Screen, speed: number): readonly number[] {
  if (cursor(wall.sync) !== cursor(phone.sync)) return []
  const [first, second] = [wall.now(), phone.now()]
  const here = segmentClock(wall.state(), first)?.toGoMs
  const there = segmentClock(phone.state(), second)?.toGoMs
  if (here === undefined && there === undefined) return []
  return [Math.abs((here ?? Infinity) - (there ?? Infinity)) / speed]
}

function pressSome(wall: Screen, phone: Screen, look: number): void {
  wall.press('note.1', { words: `Look ${look}` })
  phone.press('incident.1', { what: 'deSlot' })
}

/** Comes, stays a little, goes. @returns whether it had the whole log and the time */
async function visit(viewer: Device | undefined, meeting: string): Promise<boolean> {
  if (!viewer) return false
  const screen = new Screen(viewer, meeting)
  try {
    await screen.live()
    const had = cursor(screen.sync)
    await sleep(VIEWER_STAYS_MS)
    return had > 0 && screen.reckoning().standing === 'set'
  } catch {
    return false
  } finally {
    screen.close()
  }
}

async function missingOf(wanted: number, wall: Screen, phone: Screen): Promise<number> {
  const ours = new Set([wall.device.id, phone.device.id])
  const missing = () =>
    wanted - wall.sync.confirmed.filter(({ device }) => !ours.has(device)).length
  const until = performance.now() + LAST_ONES_WITHIN_REAL_MS
  while (missing() > 0 && performance.now() < until) await sleep(LOOK_EVERY_MS)
  return Math.max(0, missing())
}

async function auditOf(wall: Screen, phone: Screen) {
  const screens = [wall, phone]
  for (const screen of screens) {
    await screen.until('an empty outbox', ({ sync }) => sync.pending.length === 0)
  }
  const log = await wholeLog(wall.device, wall.meeting)
  for (const screen of screens) {
    await screen.until('the whole log', ({ sync }) => cursor(sync) >= log.length)
  }
  const { acknowledged, lost, twice } = audit(log, screens)
  const text = JSON.stringify(log)
  const held = ({ sync }: Screen) => JSON.stringify(sync.confirmed.slice(0, log.length))
  const differing = screens.filter((screen) => held(screen) !== text).length
  return { pressed: wall.n + phone.n, acknowledged, lost, twice, differing }
}
