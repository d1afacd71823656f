/** Work timed, and its row: the median over the seeds, and the worst. */
import { median, rounded, type Row } from '../row.ts'

export interface Timed<T = unknown> {
  readonly ms: number
  readonly answer: T
}

export function timed<T>(work: () => T): Timed<T> {
  const began = performance.now()
  const answer = work()
  return { ms: performance.now() - began, answer }
}

/** Processor time of this process: what few runs come to on a machine that others use too. */
export function processorTimed<T>(work: () => T): Timed<T> {
  const before = process.cpuUsage()
  const answer = work()
  const { user, system } = process.cpuUsage(before)
  return { ms: (user + system) / 1_000, answer }
}

export interface Times {
  readonly runs: readonly Timed[]
  readonly goalMs: number | null
  readonly plain?: readonly Timed[]
}

/** The worst may take three times as long as the median is to. */
export function timeRow(figure: string, { runs, goalMs, plain }: Times): Row {
  const all = runs.map(({ ms }) => ms)
  const [value, worst] = [median(all), Math.max(...all)]
  const baseline = plain ? median(plain.map(({ ms }) => ms)) : null
  return {
    figure: `${figure}; worst ${rounded(worst)} ms`,
    value: rounded(value),
    unit: 'ms',
    baseline: baseline === null ? null : rounded(baseline),
    ratio: baseline === null ? null : rounded(value / baseline),
    goal: goalMs === null ? 'shown' : `at most ${goalMs}, worst ${3 * goalMs}`,
    met: goalMs === null || (value <= goalMs && worst <= 3 * goalMs),
  }
}
