/**
 * The fold of a long log. Four times slow-down is reckoned, not staged: four times the measured median is held
 * against the goal, since the work is one thread's arithmetic and nothing else. Medians of five runs in which
 * fold and baseline alternate, once the engine knows both: a screen whose log has grown to this length has
 * folded it thousands of times. The first fold after a reload is several times slower and is not meant here.
 */
import { fold, readEntry } from '@pitlamp/race'
import { longLog } from './logs/long-log.ts'
import { median, rounded, type Row } from './row.ts'

const ENTRIES = 20_000
const SLOW_DOWN = 4
const GOAL_MS = 20
const WARM_UPS = 40
const RUNS = 5

export function bench(): readonly Row[] {
  const recorded = longLog(ENTRIES)
  const text = JSON.stringify(recorded)
  const entries = recorded.map(readEntry)
  const parsing: number[] = []
  const folding: number[] = []
  for (let run = 0; run < WARM_UPS + RUNS; run += 1) {
    parsing.push(timed(() => JSON.parse(text) as unknown))
    folding.push(timed(() => fold(entries)))
  }
  const value = SLOW_DOWN * median(folding.slice(-RUNS))
  const baseline = SLOW_DOWN * median(parsing.slice(-RUNS))
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
