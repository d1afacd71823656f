/** What a rotation is worked out for: the documents as they are meant, and once the race runs what was driven. */
import {
  continuedTimeline,
  emptyState,
  inForce,
  phaseOf,
  planTimeline,
  withDrafts,
  type Crew,
  type Drafts,
  type Plan,
  type Regulations,
  type State,
  type Timeline,
  type TimelineSpan,
} from '@pitlamp/race'

export interface Ground {
  readonly state: State
  readonly now: number
  readonly isRace: boolean
  readonly regulations: Regulations
  readonly crew: Crew
  /** As it is written down. */
  readonly plan: Plan
  /** The plan, or what was driven followed by what is planned. */
  readonly timeline: Timeline
  /** Every line of the plan as it lies now. */
  readonly planned: readonly TimelineSpan[]
}

export interface Meant {
  /** The log's. */
  readonly recorded: State
  /** Meeting time. */
  readonly now: number
  /** In place of what the meeting goes by. */
  readonly drafts: Drafts
}

/** Undefined while there are no rules, or nobody in the crew. Before the start time counts from 0, as a plan does. */
export function groundOf({ recorded, now, drafts }: Meant): Ground | undefined {
  const isRace = phaseOf(recorded).phase !== 'beforeStart'
  const meant = {
    rules: drafts.rules ?? inForce(recorded, 'rules', now),
    crew: drafts.crew ?? inForce(recorded, 'crew', now),
    plan: drafts.plan ?? inForce(recorded, 'plan', now),
  }
  const { rules, crew, plan } = meant
  if (!rules || !crew || !plan || crew.people.length === 0) return undefined
  const at = isRace ? now : 0
  const state = isRace
    ? withDrafts(recorded, changed(recorded, drafts, now))
    : withDrafts(emptyState, meant)
  return {
    ...{ state, isRace, crew, plan },
    now: at,
    regulations: rules,
    timeline: isRace ? continuedTimeline(state, at) : planTimeline(state, at),
    planned: planTimeline(state, at).spans,
  }
}

/** A draft that says what the meeting goes by anyway does not take the place of what held before it. */
function changed(state: State, drafts: Drafts, now: number): Drafts {
  const entries = Object.entries(drafts).filter(
    ([name, content]) =>
      JSON.stringify(content) !==
      JSON.stringify(inForce(state, name as keyof Drafts & ('rules' | 'crew' | 'plan'), now)),
  )
  return Object.fromEntries(entries)
}
