/**
 * From a press to every screen, durable: the built server against a bare better-sqlite3 insert with a `ws`
 * broadcast, both under the same generator, in turns. Each figure is the median of five runs.
 */
import { startBare, startPitlamp, underLoad, type Run, type Server } from './load/processes.ts'
import { median, rounded, type Row } from './row.ts'

const RUNS = 5
const SECONDS = 4
const LOADS = [
  { screens: 50, pressesASecond: 20 },
  { screens: 50, pressesASecond: 100 },
  { screens: 200, pressesASecond: 20 },
  { screens: 200, pressesASecond: 100 },
] as const
type Shape = (typeof LOADS)[number]

const P50_RATIO = 1.5
const P99_RATIO = 2
const P99_MS = 50
const CPU_RATIO = 1.6

export async function bench(): Promise<readonly Row[]> {
  const [ours, bare] = [await startPitlamp(), await startBare()]
  try {
    const rows: Row[] = []
    for (const shape of LOADS) rows.push(...(await measure({ ours, bare }, shape)))
    return rows
  } finally {
    await ours.stop()
    await bare.stop()
  }
}

let pressed = 0

async function measure(servers: { ours: Server; bare: Server }, shape: Shape): Promise<Row[]> {
  const runs: { ours: Run[]; bare: Run[] } = { ours: [], bare: [] }
  for (let run = 0; run < RUNS; run += 1) {
    for (const which of ['ours', 'bare'] as const) {
      const load = { ...shape, seconds: SECONDS, firstN: pressed + 1 }
      runs[which].push(await underLoad(servers[which], load))
      pressed += shape.pressesASecond * SECONDS
    }
  }
  const middle = (which: 'ours' | 'bare', of: (run: Run) => number) => median(runs[which].map(of))
  const figure = (name: string) =>
    `${name}, ${shape.screens} screens, ${shape.pressesASecond} presses/s (baseline: bare insert + ws)`
  const row = (name: string, unit: string, of: (run: Run) => number) => {
    const [value, baseline] = [middle('ours', of), middle('bare', of)]
    return { figure: figure(name), unit, value, baseline, ratio: value / baseline }
  }
  const p50 = row('press to screen, p50', 'ms', (run) => run.p50Ms)
  const p99 = row('press to screen, p99', 'ms', (run) => run.p99Ms)
  const cpu = row('CPU a delivery', 'µs', (run) => run.cpuMicrosecondsADelivery)
  return [
    judged(p50, `at most ${P50_RATIO} ×`, p50.ratio <= P50_RATIO),
    judged(
      p99,
      `at most ${P99_RATIO} ×, under ${P99_MS} ms`,
      p99.ratio <= P99_RATIO && p99.value < P99_MS,
    ),
    judged(cpu, `at most ${CPU_RATIO} ×`, cpu.ratio <= CPU_RATIO),
  ]
}

interface Figure {
  readonly figure: string
  readonly unit: string
  readonly value: number
  readonly baseline: number
  readonly ratio: number
}

function judged(row: Figure, goal: string, met: boolean): Row {
  const [value, baseline, ratio] = [row.value, row.baseline, row.ratio].map(rounded)
  return { ...row, value: value ?? 0, baseline: baseline ?? 0, ratio: ratio ?? 0, goal, met }
}
