/**
 * The fold of a long log. Four times slow-down is reckoned, not staged: four times the measured median is held
 * against the goal, since the work is one thread's arithmetic and nothing else. Medians of five runs in which
 * fold and baseline alternate, after two of each to warm up.
 */
import { fold, readEntry } from '@pitlamp/race'
import { longLog } from './logs/long-log.ts'
import { median, rounded, type Row } from './row.ts'

const ENTRIES = 20_000
const SLOW_DOWN = 4
const GOAL_MS = 20
const WARM_UPS = 2
const RUNS = 5

export function bench(): readonly Row[] {
  const recorded = longLog(ENTRIES)
  const text = JSON.stringify(recorded)
  const entries = recorded.map(readEntry)
  const folding: number[] = []
  const parsing: number[] = []
  for (let run = 0; run < WARM_UPS + RUNS; run += 1) {
    const parsed = timed(() => JSON.parse(text) as unknown)
    const folded = timed(() => fold(entries))
    if (run < WARM_UPS) continue
    parsing.push(parsed)
    folding.push(folded)
  }
  const value = SLOW_DOWN * median(folding)
  const baseline = SLOW_DOWN * median(parsing)
  return [
    {
      figure: 'fold of 20,000 entries × 4 (baseline: plain JSON.parse of the same entries × 4)',
      value: rounded(value),
      unit: 'ms',
      baseline: rounded(baseline),
      ratio: rounded(value / baseline),
      goal: `under ${GOAL_MS}`,
      met: value < GOAL_MS,
    },
  ]
}

function timed(work: () => unknown): number {
  const began = performance.now()
  work()
  return performance.now() - began
}
