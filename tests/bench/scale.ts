/**
 * Many meetings over one PostgreSQL: one process, and two that share the screens of every meeting, against a bare
 * insert with a `ws` broadcast to the meeting. All under the same generator, in turns; each figure is a median.
 */
import { loadavg } from 'node:os'
import {
  startTargets,
  underMeetings,
  WHICH,
  type Run,
  type Targets,
  type Which,
} from './load/scale-processes.ts'
import { median, rounded, type Row } from './row.ts'

const DEVICES = 10
const PRESSES_A_SECOND = 50
const SECONDS = 8
/** Of the larger one fewer: each opens five thousand connections first. */
const SHAPES = [
  { meetings: 100, runs: 5, p99Ms: 60 },
  { meetings: 500, runs: 3, p99Ms: 150 },
] as const
type Shape = (typeof SHAPES)[number]

const CPU_RATIO = 1.15

export async function bench(): Promise<readonly Row[]> {
  const meetings = Math.max(...SHAPES.map((shape) => shape.meetings))
  const targets = await startTargets({ meetings, devices: DEVICES })
  try {
    const rows: Row[] = []
    for (const shape of SHAPES) rows.push(...rowsOf(shape, await measure(targets, shape)))
    return rows
  } finally {
    await targets.stop()
  }
}

type Runs = Readonly<Record<Which, readonly Run[]>>
let firstN = 0

async function measure(targets: Targets, { meetings, runs }: Shape): Promise<Runs> {
  const made: Record<Which, Run[]> = { bare: [], one: [], two: [] }
  for (let run = 0; run < runs; run += 1) {
    for (const which of WHICH) {
      const load = { meetings, firstN, pressesASecond: PRESSES_A_SECOND, seconds: SECONDS }
      made[which].push(await underMeetings(targets.of[which], load))
    }
    firstN += PRESSES_A_SECOND * SECONDS
    console.error(`${meetings} meetings, run ${run + 1}: load average ${String(loadavg()[0])}`)
  }
  return made
}

function rowsOf({ meetings, p99Ms }: Shape, runs: Runs): readonly Row[] {
  const middle = (which: Which, of: (run: Run) => number) => median(runs[which].map(of))
  const shape = `${meetings} meetings × ${DEVICES} devices, ${PRESSES_A_SECOND} entries/s`
  const row = (name: string, unit: string, [value, baseline]: readonly [number, number]) => ({
    ...{ figure: `${name}, ${shape}`, unit },
    ...{ value: rounded(value), baseline: rounded(baseline), ratio: rounded(value / baseline) },
  })
  const told = { one: 'one process', two: 'two processes' }
  const cpu = (run: Run) => run.cpuMicrosecondsAnEntry
  const against = (which: 'one' | 'two', of: (run: Run) => number) =>
    [middle(which, of), middle('bare', of)] as const
  const both = (['one', 'two'] as const).flatMap((which) => {
    const name = (figure: string) => `${figure}, ${told[which]} (baseline: bare insert + ws)`
    const p50 = row(
      name('press to screen, p50'),
      'ms',
      against(which, (run) => run.p50Ms),
    )
    const p99 = row(
      name('press to screen, p99'),
      'ms',
      against(which, (run) => run.p99Ms),
    )
    const spent = row(name('CPU an entry'), 'µs', against(which, cpu))
    return [
      { ...p50, goal: 'told', met: true },
      { ...p99, goal: `at most ${p99Ms} ms`, met: p99.value <= p99Ms },
      { ...spent, goal: 'told', met: true },
    ]
  })
  const shared = row('CPU an entry, two processes (baseline: one)', 'µs', [
    middle('two', cpu),
    middle('one', cpu),
  ])
  return [...both, { ...shared, goal: `at most ${CPU_RATIO} ×`, met: shared.ratio <= CPU_RATIO }]
}
