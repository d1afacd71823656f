/**
 * The load generator of many meetings, a process of its own: so many screens in each, presses at an even rate, each
 * in the next meeting, and for each press the time until every screen of its meeting has it, by this process's one
 * clock. Prints one line of JSON.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import { ENVELOPE_VERSION, type Entry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import { Delays } from './delays.ts'
import { openLine, type Line, type Target } from './line.ts'

export interface MeetingsLoad {
  readonly kind: Target['kind']
  /** Screens go to these in turn, those of one meeting to all of them. */
  readonly ports: readonly number[]
  readonly meetings: readonly string[]
  /** One screen of each in every meeting. */
  readonly devices: readonly { readonly id: string; readonly cookie: string }[]
  readonly firstN: number
  readonly pressesASecond: number
  readonly seconds: number
}

const LAST_ONES_WITHIN_MS = 20_000
const OPEN_AT_ONCE = 25
/** Screens that have just come tell each other that they are there. */
const QUIET_MS = 4_000

const load = JSON.parse(process.argv[2] ?? '') as MeetingsLoad
const delays = new Delays()

interface Screen {
  readonly line: Line
  readonly device: string
}

/** Meeting after meeting, in each a screen of every device. */
async function openScreens(): Promise<readonly Screen[]> {
  const { kind, ports, meetings, devices } = load
  const wanted = meetings.flatMap((meeting) =>
    devices.map(({ id, cookie }, index) => ({
      device: id,
      target: { kind, cookie, meeting, port: ports[index % ports.length] ?? 0 },
    })),
  )
  const screens: Screen[] = []
  for (let from = 0; from < wanted.length; from += OPEN_AT_ONCE) {
    const some = wanted.slice(from, from + OPEN_AT_ONCE).map(async ({ device, target }) => {
      return { device, line: await openLine(target, delays.heard) }
    })
    screens.push(...(await Promise.all(some)))
  }
  return screens
}

const counts = new Map<string, number>()

function entryOf(device: string): Entry {
  const n = (counts.get(device) ?? load.firstN) + 1
  counts.set(device, n)
  return {
    v: ENVELOPE_VERSION,
    id: uuidV7(),
    device,
    n,
    at: Date.now(),
    atBoundMs: 20,
    epoch: 1,
    kind: 'incident.1',
    body: JSON.stringify({ what: 'deSlot', where: 'Bank before the bridge' }),
  }
}

async function pressAll(screens: readonly Screen[]): Promise<number> {
  const { meetings, devices, pressesASecond, seconds } = load
  const startedAt = performance.now()
  const presses = pressesASecond * seconds
  for (let n = 0; n < presses; n += 1) {
    const dueAt = startedAt + (n * 1000) / pressesASecond
    if (dueAt > performance.now()) await sleep(dueAt - performance.now())
    const inMeeting = n % devices.length
    const screen = screens[(n % meetings.length) * devices.length + inMeeting]
    if (!screen) throw new Error('There is no such screen.')
    const entry = entryOf(screen.device)
    delays.sent(entry.id)
    screen.line.press(entry)
  }
  return presses
}

const screens = await openScreens()
await sleep(QUIET_MS)
process.send?.('pressing')
const presses = await pressAll(screens)
const expected = presses * load.devices.length
await delays.allHeard(expected, LAST_ONES_WITHIN_MS)
process.send?.('pressed')
for (const { line } of screens) line.close()

console.log(JSON.stringify(delays.measured(presses, expected)))
process.exit(0)
