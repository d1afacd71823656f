/** What race control took from us or gave us that no classification of a segment holds yet. */
import type { State } from '../fold/state.ts'
import type { Distance } from './laps-and-sections.ts'
import type { SegmentResult } from './segment-results.ts'

export interface OurLaps {
  /** To be added to the sum of the segments; its laps may be below 0. */
  readonly change: Distance & { readonly sections: number }
  /** Classifications whose segment we lost. */
  readonly lost: ReadonlySet<string>
  readonly excluded: boolean
}

/**
 * What was given while a segment ran, or after it, is in its classification where that was entered later; the rest
 * comes off here, and so does what was given in a run that is not counted. What was withdrawn after it had been taken
 * into a classification is given back.
 */
export function ourLaps(state: State, results: readonly SegmentResult[], now: number): OurLaps {
  const holds = (at: number) =>
    results.find((one) => one.run !== undefined && one.run.greenAt <= at && at <= one.at)
  let [laps, sections] = [0, 0]
  let excluded = false
  const lost = new Set<string>()
  for (const { at, body, withdrawnAt } of state.raceControl.penalties) {
    if (at > now) continue
    const taken = holds(at)
    const stands = withdrawnAt === undefined || withdrawnAt > now
    const amount = body.what === 'laps' ? (body.laps ?? 0) : 0
    if (!taken && stands) laps -= amount
    if (taken && !stands && withdrawnAt > taken.at) laps += amount
    if (!stands) continue
    excluded ||= body.what === 'exclusion'
    const segment = body.what === 'lossOfSegment' && !taken ? lastBefore(results, at) : undefined
    if (segment) lost.add(segment.entry)
  }
  for (const { at, body } of state.raceControl.lapsCorrections) {
    if (at > now || holds(at)) continue
    laps += body.laps
    sections += body.sections ?? 0
  }
  return { change: { laps, sections }, lost, excluded }
}

function lastBefore(results: readonly SegmentResult[], at: number): SegmentResult | undefined {
  return results.filter(({ run }) => run !== undefined && run.greenAt <= at).at(-1)
}
