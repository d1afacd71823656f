/** What became of a segment so far, and how long it is held to last. */
import type { SegmentItem } from '../documents/rules.ts'
import type { SegmentRun, State } from '../fold/state.ts'

export interface Standing {
  readonly state: 'ahead' | 'running' | 'over' | 'abandoned'
  /** Its last running; absent while it is ahead, also where it is to be run again. */
  readonly run?: SegmentRun
}

/** By its last run, and by what race control said of it since. */
export function standingOf(state: State, item: SegmentItem): Standing {
  const run = lastRunOf(state, item.id)
  const word = lastWordOn(state, item.id, run)
  if (!run) return { state: word === 'abandoned' ? 'abandoned' : 'ahead' }
  if (run.endAt === undefined) return { state: 'running', run }
  if (word === 'runAgain') return { state: 'ahead' }
  return { state: run.abandoned ? 'abandoned' : 'over', run }
}

function lastRunOf(state: State, segment: string): SegmentRun | undefined {
  const { runs } = state.raceControl
  for (let i = runs.length - 1; i >= 0; i -= 1) if (runs[i]?.segment === segment) return runs[i]
  return undefined
}

function lastWordOn(state: State, segment: string, run: SegmentRun | undefined) {
  let word: 'abandoned' | 'runAgain' | undefined
  for (const { at, body } of state.raceControl.segmentChanges) {
    if (body.segment !== segment || (run && at < run.greenAt)) continue
    if (body.change.what !== 'length') word = body.change.what
  }
  return word
}

/** In ms, as race control last said; undefined where it is counted in laps. */
export function lengthOf(
  state: State,
  item: SegmentItem,
  run: SegmentRun | undefined,
): number | undefined {
  let length = run?.length ?? item.length
  for (const { body } of run ? [] : state.raceControl.segmentChanges) {
    if (body.segment !== item.id || body.change.what !== 'length') continue
    length = { by: 'time', lengthMs: body.change.lengthMs }
  }
  return length.by === 'time' ? length.lengthMs : undefined
}
