/**
 * Every check on a plan of 24 h, as often as the ribbon asks while a finger drags. Four times slow-down is reckoned,
 * not staged: see `fold.ts`. Medians of runs in which checks and baseline alternate, once the engine knows both. Checks
 * and plan are bundled as browsers get them.
 */
import { join } from 'node:path'
import { bundled } from './bundle/bundled.ts'
import type * as Dragged from './plans/dragged.ts'
import { median, rounded, type Row } from './row.ts'

const SLOW_DOWN = 4
const GOAL_MS = 10
const WARM_UPS = 200
const RUNS = 101

export async function bench(): Promise<readonly Row[]> {
  const dragged = join(import.meta.dirname, 'plans/dragged.ts')
  const { findings, longPlan } = await bundled<typeof Dragged>(dragged)
  const plan = longPlan()
  const text = JSON.stringify(plan)
  const parsing: number[] = []
  const checking: number[] = []
  for (let run = 0; run < WARM_UPS + RUNS; run += 1) {
    parsing.push(timed(() => JSON.parse(text) as unknown))
    checking.push(timed(() => findings(plan)))
  }
  const value = SLOW_DOWN * median(checking.slice(-RUNS))
  const baseline = SLOW_DOWN * median(parsing.slice(-RUNS))
  return [
    {
      figure:
        'checks of a 24 h plan, 96 drives × 4 (baseline: plain JSON.parse of the same plan × 4)',
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
