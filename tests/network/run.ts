/** Many schedules, drawn from a seed, until one fails. */
import fc from 'fast-check'
import { step } from '@pitlamp/sync'
import { schedules } from './schedule.ts'
import type { Machine } from './screen.ts'
import { play } from './simulation.ts'

interface Asked {
  readonly schedules: number
  readonly seed: number
  readonly machine?: Machine
  /** Looking for the shortest schedule that fails takes longer than finding one. */
  readonly shrink?: boolean
}

export interface Ran {
  readonly played: number
  readonly failure?: { readonly law: string; readonly report: string }
}

export async function run({
  schedules: numRuns,
  seed,
  machine = step,
  shrink,
}: Asked): Promise<Ran> {
  const property = fc.asyncProperty(schedules, (schedule) => play(schedule, machine))
  const ran = await fc.check(property, { numRuns, seed, endOnFailure: !shrink })
  if (!ran.failed) return { played: ran.numRuns }
  const [law = ''] = String(ran.errorInstance).split('\n')
  const report = fc.defaultReportMessage(ran) ?? law
  return { played: ran.numRuns, failure: { law, report } }
}
