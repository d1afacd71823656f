/**
 * `npm run fuzz -- network`: the schedules of `npm test`, many more of them. A schedule that fails is shrunk and
 * printed, ready to become a test in found.test.ts.
 */
import type { Row } from '../bench/row.ts'
import { run } from './run.ts'

export const LONG_SCHEDULES = 100_000
export const SHORT_SCHEDULES = 2_000

interface Asked {
  readonly schedules: number
  readonly seed: number
}

export async function fuzzNetwork({ schedules, seed }: Asked): Promise<readonly Row[]> {
  console.error(`${String(schedules)} schedules, seed ${String(seed)} …`)
  const { played, failure } = await run({ schedules, seed, shrink: true })
  if (failure) {
    console.error(failure.law)
    console.error(failure.report)
  }
  return [
    {
      figure: `schedules after which all screens agree with the server (seed ${String(seed)})`,
      value: failure ? played - 1 : played,
      unit: 'schedules',
      baseline: null,
      ratio: null,
      goal: `all of ${String(schedules)}`,
      met: !failure,
    },
  ]
}
