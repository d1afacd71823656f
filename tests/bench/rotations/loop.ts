/**
 * How long the server's loop stands still while a thread of its own works a rotation out, against as long a time in
 * which nobody asks for anything. The real server, a log of a whole race, a captain who asks over HTTP as a screen does.
 */
import { readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join as joinPath } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { workLineSchema, type WorkLine, type WorkOut } from '@pitlamp/contract'
import { ENVELOPE_VERSION, type Entry, type Rule } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import { meantOf, MINUTE } from '../../../server/src/work/testing/meant.ts'
import { join, type Device } from '../../device.ts'
import { startServer, type RunningServer } from '../../running-server.ts'
import { openLine } from '../load/line.ts'
import { rounded, type Row } from '../row.ts'

const RUNS = 2
const ENTRIES = 10_000
const AT_ONCE = 250
const HEARD_WITHIN_MS = 20_000
const SETTLE_MS = 2_000
const GOAL_MS = 20

export async function loopRows(): Promise<readonly Row[]> {
  const report = joinPath(tmpdir(), `pitlamp-loop-${process.pid}.json`)
  const preload = [joinPath(import.meta.dirname, '../load/loop-process.mjs')]
  const server = await startServer({ preload, env: { LOOP_REPORT: report } })
  try {
    const captain = await join(server.url, await server.captainCode(), 'Laptop of the bench')
    const meeting = await enterMeeting(server, captain)
    const since = () => stoodStill(server.pid, report)
    await sleep(SETTLE_MS)
    const [working, idle]: [Still[], Still[]] = [[], []]
    for (let run = 0; run < RUNS; run += 1) {
      await since()
      const began = performance.now()
      await workedOut(captain, meeting)
      working.push(await since())
      const ms = performance.now() - began
      await sleep(SETTLE_MS)
      await since()
      await sleep(ms)
      idle.push(await since())
    }
    return [row('longest', 'maxMs', { working, idle }), row('p99', 'p99Ms', { working, idle })]
  } finally {
    await server.stop()
    rmSync(report, { force: true })
  }
}

interface Still {
  readonly maxMs: number
  readonly p99Ms: number
}

/** The worst of the runs on either side. */
function row(name: string, of: keyof Still, all: { working: Still[]; idle: Still[] }): Row {
  const worst = (runs: readonly Still[]) => Math.max(...runs.map((run) => run[of]))
  const [value, baseline] = [worst(all.working), worst(all.idle)]
  return {
    figure: `the server’s loop stands still while 24 h × 8 people are worked out, ${name} (baseline: idle)`,
    ...{ value: rounded(value), unit: 'ms', baseline: rounded(baseline) },
    ratio: rounded(value / baseline),
    goal: `at most ${GOAL_MS}`,
    met: value <= GOAL_MS,
  }
}

/** Since it was asked for the last time. */
async function stoodStill(pid: number, report: string): Promise<Still> {
  rmSync(report, { force: true })
  process.kill(pid, 'SIGUSR2')
  for (;;) {
    await sleep(50)
    const text = read(report)
    if (text !== undefined) return JSON.parse(text) as Still
  }
}

function read(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}

const RULES: readonly Rule[] = [
  {
    id: 'longest',
    kind: 'continuousDriving',
    value: { atLeastMs: 30 * MINUTE, atMostMs: 75 * MINUTE },
  },
  { id: 'rest', kind: 'driverRest', value: { atLeastMs: 30 * MINUTE, marshalling: 'isRest' } },
  { id: 'drivers', kind: 'numberOfDrivers', value: { atLeast: 8 } },
]

const ASKED: WorkOut = {
  ...{ from: 'drafts', want: 'plan', duties: [], stopEveryMs: 5 * MINUTE },
  balance: { toleranceMs: 15 * MINUTE, lapsPerHour: 40 },
}

/** Sixteen segments of an hour and a half, and a log as long as that of a day and a night. */
async function enterMeeting(server: RunningServer, captain: Device): Promise<string> {
  const { drafts } = meantOf({
    segments: Array.from({ length: 16 }, () => 90),
    lanes: Array.from({ length: 16 }, (_, place) => (place % 6) + 1),
    people: Array.from({ length: 8 }, (_, place) => ({
      name: `Person ${place + 1}`,
      paceMs: 9_000 + 150 * place,
    })),
    rules: RULES,
  })
  const meeting = uuidV7()
  await captain.call('POST', '/api/meetings', { id: meeting, name: 'Bench' })
  for (const [document, content] of Object.entries(drafts)) {
    await captain.call('PUT', `/api/meetings/${meeting}/documents/${document}`, {
      ...{ basedOn: 0, content },
    })
  }
  await pressAll(server, captain, meeting)
  return meeting
}

async function pressAll({ port }: RunningServer, device: Device, meeting: string): Promise<void> {
  let heard = 0
  const cookie = device.headers['cookie'] ?? ''
  const line = await openLine({ kind: 'pitlamp', port, cookie, meeting }, (ids) => {
    heard += ids.length
  })
  for (let pressed = 0; pressed < ENTRIES; pressed += AT_ONCE) {
    line.press(...Array.from({ length: AT_ONCE }, (_, n) => entryOf(device.id, pressed + n + 1)))
    const until = performance.now() + HEARD_WITHIN_MS
    while (heard < pressed + AT_ONCE) {
      if (performance.now() > until) throw new Error('What was pressed is not heard.')
      await sleep(5)
    }
  }
  line.close()
}

function entryOf(device: string, n: number): Entry {
  return {
    ...{ v: ENVELOPE_VERSION, id: uuidV7(), device, n, at: Date.now(), atBoundMs: 20, epoch: 1 },
    kind: 'incident.1',
    body: JSON.stringify({ what: 'deSlot', where: 'Bank before the bridge' }),
  }
}

async function workedOut(captain: Device, meeting: string): Promise<void> {
  const answer = await fetch(new URL(`/api/meetings/${meeting}/work`, captain.url), {
    ...{ method: 'POST', body: JSON.stringify(ASKED) },
    headers: { ...captain.headers, 'content-type': 'application/json' },
  })
  const last = (await answer.text()).trim().split('\n').at(-1) ?? ''
  const line: WorkLine = workLineSchema.parse(JSON.parse(last))
  if (line.kind !== 'worked') throw new Error(`It was not worked out: ${last}`)
}
