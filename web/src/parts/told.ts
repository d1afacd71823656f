/** What changed for one person since they last heard of it: the state without what they have not heard, and with it. */
import {
  changesFor,
  fold,
  type ChangeFor,
  type LogEntry,
  type LogLine,
  type State,
} from '@pitlamp/race'

const KINDS: ReadonlySet<string> = new Set([
  ...['programmeMoved.1', 'segmentChanged.1', 'startDrawn.1', 'laneDrawn.1', 'stayOut.1'],
])

export interface Unheard {
  /** Entries that were made before are known. */
  readonly since: number
  readonly heard: readonly string[]
}

/** Entries that may change what somebody has to do, and that this person has not heard of, in order. */
export function unheardOf({ record }: State, { since, heard }: Unheard): readonly string[] {
  const changing = new Set(record.log.filter(isChanging).map(({ entry }) => entry.id))
  return record.log
    .filter(({ entry }) => changing.has(entry.id) || changing.has(targetOf(entry) ?? ''))
    .filter(({ entry }) => (entry.recordedAt ?? entry.at) >= since && !heard.includes(entry.id))
    .map(({ entry }) => entry.id)
}

function isChanging({ entry }: LogLine): boolean {
  if ('unread' in entry) return false
  if (entry.kind !== 'adopted.1') return KINDS.has(entry.kind)
  return entry.body.document === 'plan' || entry.body.document === 'rules'
}

function targetOf(entry: LogEntry): string | undefined {
  return !('unread' in entry) && entry.kind === 'correction.1' ? entry.body.target : undefined
}

/** The meeting as it would be without these. */
export function without({ record }: State, unheard: readonly string[]): State {
  const left = record.log.filter(({ entry }) => !unheard.includes(entry.id))
  return fold(left.map(({ entry }) => entry))
}

/** Nothing where there was no plan before: that is no change. */
export function toldTo(
  person: string,
  { before, after, now }: { readonly before: State; readonly after: State; readonly now: number },
): readonly ChangeFor[] {
  if (before.documents.plan.length === 0) return []
  return changesFor({ state: before, now }, { state: after, now }, person)
}
