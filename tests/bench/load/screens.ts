/**
 * The load generator, a process of its own: so many screens, presses at an even rate from four of them, and for
 * each press the time until each screen has it, by this process's one clock. Prints one line of JSON.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import { ENVELOPE_VERSION, type Entry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import { Delays } from './delays.ts'
import { openLine, type Line, type Target } from './line.ts'

export interface Load {
  readonly target: Target
  readonly device: string
  /** The device's count starts here: every run goes on where the last one ended. */
  readonly firstN: number
  readonly screens: number
  readonly pressesASecond: number
  readonly seconds: number
}

const PRESSERS = 4
const LAST_ONES_WITHIN_MS = 10_000
const OPEN_AT_ONCE = 25

const load = JSON.parse(process.argv[2] ?? '') as Load
const delays = new Delays()

async function openScreens(): Promise<readonly Line[]> {
  const lines: Line[] = []
  while (lines.length < load.screens) {
    const some = Math.min(OPEN_AT_ONCE, load.screens - lines.length)
    const opened = Array.from({ length: some }, () => openLine(load.target, delays.heard))
    lines.push(...(await Promise.all(opened)))
  }
  return lines
}

function entryAt(n: number): Entry {
  return {
    v: ENVELOPE_VERSION,
    id: uuidV7(),
    device: load.device,
    n: load.firstN + n,
    at: Date.now(),
    atBoundMs: 20,
    epoch: 1,
    kind: 'incident.1',
    body: JSON.stringify({ what: 'deSlot', where: 'Bank before the bridge' }),
  }
}

async function pressAll(lines: readonly Line[]): Promise<number> {
  const startedAt = performance.now()
  const presses = load.pressesASecond * load.seconds
  for (let n = 0; n < presses; n += 1) {
    const dueAt = startedAt + (n * 1000) / load.pressesASecond
    if (dueAt > performance.now()) await sleep(dueAt - performance.now())
    const entry = entryAt(n)
    delays.sent(entry.id)
    lines[n % PRESSERS]?.press(entry)
  }
  return presses
}

const lines = await openScreens()
process.send?.('open')
await sleep(1_500)
process.send?.('pressing')
const presses = await pressAll(lines)
const expected = presses * load.screens
await delays.allHeard(expected, LAST_ONES_WITHIN_MS)
process.send?.('pressed')
for (const line of lines) line.close()

console.log(JSON.stringify(delays.measured(presses, expected)))
process.exit(0)
