/** Many devices behind the proxy that press all the time, and what became of their connections and presses. */
import { setTimeout as sleep } from 'node:timers/promises'
import { audit, wholeLog, type Audit } from '../audit.ts'
import type { Device } from '../device.ts'
import type { Random } from '../power/random.ts'
import { Screen } from '../screen.ts'

export interface Crowd {
  readonly screens: readonly Screen[]
  /** From a press to its being saved, in ms, of every press that was. */
  readonly savedAfterMs: readonly number[]
  /** Watches while something happens, and until every screen has a server again. */
  readonly watch: (happens: () => Promise<void>) => Promise<readonly Gap[]>
  /** Devices press while this goes on; between, their own logs stay short enough for one process to keep fifty. */
  readonly pressing: <T>(during: () => Promise<T>) => Promise<T>
  /** Waits until each press is saved everywhere. */
  readonly settle: () => Promise<Settled>
  readonly close: () => void
}

/** A screen lost its server and was welcomed by one again. */
export interface Gap {
  /** Since it noticed. */
  readonly sinceLostMs: number
  /** Since what happened began. */
  readonly sinceBeginningMs: number
}

export interface Settled extends Audit {
  /** Screens whose log is another than the server's. */
  readonly differing: number
  /** Presses that some screen set aside. */
  readonly setAside: number
}

export interface CrowdOptions {
  readonly captain: Device
  readonly meeting: string
  readonly devices: number
  readonly pressesASecond: number
  readonly random: Random
}

export async function openCrowd(options: CrowdOptions): Promise<Crowd> {
  const { captain, meeting, devices } = options
  const team = [captain]
  while (team.length < devices) {
    team.push(await captain.invite('pitWall', `Device ${team.length + 1}`))
  }
  const screens = team.map((device) => new Screen(device, meeting))
  for (const screen of screens) await screen.live()
  const presses = press(screens, options)
  return {
    screens,
    savedAfterMs: presses.savedAfterMs,
    pressing: presses.during,
    watch: (happens) => watch(screens, happens),
    settle: () => settle(screens, captain),
    close: () => screens.forEach((screen) => screen.close()),
  }
}

const LOOK_EVERY_MS = 4

/** By any of them, at an even rate. */
function press(screens: readonly Screen[], { pressesASecond, random }: CrowdOptions) {
  const pressedAt = new Map<string, number>()
  const savedAfterMs: number[] = []
  for (const screen of screens) {
    screen.onSaved = (id) => {
      const at = pressedAt.get(id)
      if (at !== undefined) savedAfterMs.push(performance.now() - at)
    }
  }
  const run = async (isOver: () => boolean) => {
    const startedAt = performance.now()
    for (let made = 0; !isOver(); made += 1) {
      const dueAt = startedAt + (made * 1000) / pressesASecond
      if (dueAt > performance.now()) await sleep(dueAt - performance.now())
      const screen = screens[random.below(screens.length)]
      const atMs = performance.now()
      const entry = screen?.press('incident.1', { what: 'deSlot' })
      if (entry) pressedAt.set(entry.id, atMs)
    }
  }
  return {
    savedAfterMs,
    during: async <T>(happens: () => Promise<T>): Promise<T> => {
      let over = false
      const running = run(() => over)
      const happened = await happens().finally(() => (over = true))
      await running
      return happened
    },
  }
}

/** So long after it happened somebody may notice first. */
const NOTICED_WITHIN_MS = 1_000
/** Far beyond the goal: a screen that is not back by then counts as gone for so long. */
const PATIENCE_MS = 15_000

async function watch(
  screens: readonly Screen[],
  happens: () => Promise<void>,
): Promise<readonly Gap[]> {
  const startedAt = performance.now()
  const lostAt = new Map<Screen, number>()
  const gaps: Gap[] = []
  const back = (screen: Screen, at: number) => {
    const now = performance.now()
    gaps.push({ sinceLostMs: now - at, sinceBeginningMs: now - startedAt })
    lostAt.delete(screen)
  }
  let overAt = Infinity
  const happening = happens().finally(() => (overAt = performance.now()))
  const isOver = (now: number) =>
    now > startedAt + PATIENCE_MS || (now > overAt + NOTICED_WITHIN_MS && lostAt.size === 0)
  while (overAt === Infinity || !isOver(performance.now())) {
    await sleep(LOOK_EVERY_MS)
    for (const screen of screens) {
      const at = lostAt.get(screen)
      if (!screen.connected && at === undefined) lostAt.set(screen, performance.now())
      if (screen.connected && at !== undefined) back(screen, at)
    }
  }
  await happening
  for (const [screen, at] of lostAt) back(screen, at)
  return gaps
}

async function settle(screens: readonly Screen[], captain: Device): Promise<Settled> {
  const made = screens.reduce((sum, { n }) => sum + n, 0)
  for (const screen of screens) {
    await screen.until('an empty outbox', ({ sync }) => sync.pending.length === 0)
    await screen.until('every press', ({ sync }) => sync.confirmed.length >= made)
  }
  const [first] = screens
  const log = await wholeLog(captain, first?.meeting ?? '')
  const text = JSON.stringify(log)
  return {
    ...audit(log, screens),
    differing: screens.filter(({ sync }) => JSON.stringify(sync.confirmed) !== text).length,
    setAside: screens.reduce((sum, { sync }) => sum + sync.setAside.length, 0),
  }
}
