/** What race control took from us or gave us that no classification of a segment holds yet. */
import type { State } from '../fold/state.ts'
import { runBefore } from '../time/runs-that-count.ts'
import { addDistance, type Distance } from './laps-and-sections.ts'
import { resultAbout, resultHolding, type SegmentResult } from './segment-results.ts'

type Change = Distance & { readonly sections: number }

export interface OurLaps {
  /** To be added to the sum of the segments; its laps may be below 0. */
  readonly change: Change
  /** What that is made of, each by the segment whose run it was given in or after; absent before the first green. */
  readonly changes: readonly (Change & { readonly segment?: string })[]
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
  const holds = (at: number) => resultHolding(state, results, at)
  const changes: OurLaps['changes'][number][] = []
  const change = (at: number, by: Change) =>
    changes.push({ ...by, segment: runBefore(state, at)?.segment })
  let excluded = false
  const lost = new Set<string>()
  for (const { at, body, withdrawnAt } of state.raceControl.penalties) {
    if (at > now) continue
    const taken = holds(at)
    const stands = withdrawnAt === undefined || withdrawnAt > now
    const amount = body.what === 'laps' ? (body.laps ?? 0) : 0
    if (!taken && stands) change(at, { laps: -amount, sections: 0 })
    if (taken && !stands && withdrawnAt > taken.at) change(at, { laps: amount, sections: 0 })
    if (!stands) continue
    excluded ||= body.what === 'exclusion'
    const segment =
      body.what === 'lossOfSegment' && !taken ? resultAbout(state, results, at) : undefined
    if (segment) lost.add(segment.entry)
  }
  for (const { at, body } of state.raceControl.lapsCorrections) {
    if (at > now || holds(at)) continue
    change(at, { laps: body.laps, sections: body.sections ?? 0 })
  }
  return { change: summed(changes), changes, lost, excluded }
}

/** Of the segments asked for only. */
export function changeIn(
  { changes }: OurLaps,
  isOf: (segment: string | undefined) => boolean,
): Change {
  return summed(changes.filter(({ segment }) => isOf(segment)))
}

/** Sections that are not known of the sum stay so. */
export function withChange(
  sum: Distance,
  change: Change,
  sectionsPerLap: number | undefined,
): Distance {
  const known = sum.sections === undefined ? { laps: change.laps } : change
  return addDistance(sum, known, sectionsPerLap)
}

/** What is left of a segment that was lost. */
export function nothingOf({ sections }: Distance): Distance {
  return sections === undefined ? { laps: 0 } : { laps: 0, sections: 0 }
}

function summed(changes: readonly Change[]): Change {
  return {
    laps: changes.reduce((sum, one) => sum + one.laps, 0),
    sections: changes.reduce((sum, one) => sum + one.sections, 0),
  }
}
