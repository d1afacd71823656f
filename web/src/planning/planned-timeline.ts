/** The plan as the drafts have it, as times of the day. */
import {
  emptyState,
  planTimeline,
  withDrafts,
  type Crew,
  type Plan,
  type Regulations,
  type State,
  type Timeline,
} from '@pitlamp/race'

export interface Drafts {
  readonly rules: Regulations
  readonly crew: Crew
  readonly plan: Plan
}

/** Before the first green undefined unless the programme names a time: the plan counts from a green nobody knows. */
export function plannedTimeline(state: State, drafts: Drafts, now: number): Timeline | undefined {
  const started = state.raceControl.runs.length > 0
  const isTimed = drafts.rules.programme.some(({ plannedAt }) => plannedAt !== undefined)
  if (!started && !isTimed) return undefined
  return started
    ? planTimeline(withDrafts(state, drafts), now)
    : planTimeline(withDrafts(beforeGreen(state), drafts), 0)
}

/** Before the first green a plan counts from nothing, but what was drawn is drawn. */
export function beforeGreen({ raceControl: { starts, lanes } }: State): State {
  return { ...emptyState, raceControl: { ...emptyState.raceControl, starts, lanes } }
}
