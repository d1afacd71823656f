/** Whether what was raced in a run counts: one that was ordered to be run again counts as race control ruled. */
import type { SegmentRun, State } from '../fold/state.ts'

export interface RunCounts {
  readonly laps: boolean
  readonly driving: boolean
}

/** By the last word on its segment from its green until the next green of that segment. */
export function countsOf(state: State, run: SegmentRun): RunCounts {
  const { runs, segmentChanges } = state.raceControl
  const next = runs.find(({ segment, greenAt }) => segment === run.segment && greenAt > run.greenAt)
  let counts: RunCounts = { laps: true, driving: true }
  for (const { at, body } of segmentChanges) {
    if (body.segment !== run.segment || body.change.what !== 'runAgain') continue
    if (at < run.greenAt || at >= (next?.greenAt ?? Infinity)) continue
    counts = { laps: body.change.lapsCount, driving: body.change.drivingCounts }
  }
  return counts
}

/** Stretches of meeting time of runs whose driving counts for nobody. */
export function runsNotDriven(
  state: State,
  now: number,
): readonly { readonly fromAt: number; readonly toAt: number }[] {
  return state.raceControl.runs
    .filter((run) => !countsOf(state, run).driving)
    .map(({ greenAt, endAt = now }) => ({ fromAt: greenAt, toAt: endAt }))
}

/** The run a moment lies in, or that went before it, whichever segment it is of. */
export function runBefore({ raceControl }: State, at: number): SegmentRun | undefined {
  return raceControl.runs.filter(({ greenAt }) => greenAt <= at).at(-1)
}

/** The run a moment lies in, or that went before it, of one segment. */
export function runAt(state: State, segment: string, at: number): SegmentRun | undefined {
  return state.raceControl.runs.filter((run) => run.segment === segment && run.greenAt <= at).at(-1)
}
