/** Which plan holds for a meeting, and what it stands on. */
import { meetingTime, type Draft, type Meeting } from '@pitlamp/contract'
import {
  documentSchemas,
  inForce,
  planTimeline,
  withDrafts,
  type DocumentContent,
  type Drafts,
  type Plan,
  type State,
  type Timeline,
  type TimelineSpan,
} from '@pitlamp/race'
import type { Deps } from '../deps.ts'
import type { FoldedLogs } from './folded-logs.ts'

export interface PlannedMeeting {
  readonly meeting: Meeting
  /** The log's, with drafts in place of the documents it does not have yet. */
  readonly state: State
  /** Meeting time. */
  readonly now: number
  /** Whether the plan is one that was adopted. */
  readonly adopted: boolean
  /** Rises with every entry and every saved draft. */
  readonly revision: number
  readonly timeline: Timeline
  /** Of plans that held before this one, the last first: what is still ahead and not in this one any more. */
  readonly gone: readonly TimelineSpan[]
}

/** What a plan stands on. */
const DOCUMENTS = ['rules', 'crew', 'plan'] as const

/** The plan in force; while none was adopted, its draft. Rules and crew likewise, each for itself. */
export async function plannedMeeting(
  { storage, time }: Pick<Deps, 'storage' | 'time'>,
  logs: FoldedLogs,
  meeting: Meeting,
): Promise<PlannedMeeting> {
  const now = meetingTime(meeting.clock, time.now())
  const { state: recorded, seq } = await logs.of(meeting.id)
  const drafts = await Promise.all(DOCUMENTS.map((name) => storage.read.draft(meeting.id, name)))
  const state = withDrafts(recorded, missingIn(recorded, drafts))
  const adopted = recorded.documents.plan.length > 0
  const earlier = adopted ? plansBefore(recorded, now) : await draftBefore(storage, meeting.id)
  const timeline = planTimeline(state, now)
  const before = earlier.flatMap((plan) => planTimeline(withDrafts(state, { plan }), now).spans)
  return {
    ...{ meeting, state, now, adopted, timeline },
    revision: drafts.reduce((sum, { version }) => sum + version, seq),
    gone: goneFrom(timeline.spans, before).filter(({ toAt }) => toAt > now),
  }
}

/** A span is the same one as long as line and person are. */
export function spanKey({ id, person }: Pick<TimelineSpan, 'id' | 'person'>): string {
  return `${id}-${person}`
}

/** Drafts of documents that were never adopted. */
function missingIn({ documents }: State, drafts: readonly Draft[]): Drafts {
  const missing = drafts.filter(({ document }) => documents[document].length === 0)
  const read = missing.map((draft) => [draft.document, contentOf(draft)] as const)
  return Object.fromEntries(read.filter(([, content]) => content !== undefined))
}

/** Drafts are stored as they came: one that does not fit is none. */
function contentOf({ document, content }: Draft): DocumentContent | undefined {
  return documentSchemas[document].safeParse(content).data
}

function plansBefore(state: State, now: number): readonly Plan[] {
  const held = inForce(state, 'plan', now)
  const plans = state.documents.plan.map(({ content }) => content)
  return held ? plans.slice(0, plans.lastIndexOf(held)).reverse() : []
}

async function draftBefore(storage: Deps['storage'], meeting: string): Promise<readonly Plan[]> {
  const [, before] = await storage.read.draftVersions(meeting, 'plan')
  if (!before) return []
  const { version } = before
  const draft = await storage.read.draftVersion(meeting, { document: 'plan', version })
  const plan = draft && contentOf(draft)
  return plan ? [plan as Plan] : []
}

function goneFrom(
  spans: readonly TimelineSpan[],
  earlier: readonly TimelineSpan[],
): readonly TimelineSpan[] {
  const seen = new Set(spans.map(spanKey))
  return earlier.filter((span) => {
    const key = spanKey(span)
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}
