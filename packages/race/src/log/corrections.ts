/**
 * Corrections set right original entries. Of several the last in log order holds, alone: what it does not
 * name is as it was first recorded.
 */
import { isKnownKind } from '../entry/kinds/index.ts'
import {
  bodyProblem,
  isUnread,
  type EntryOf,
  type LogEntry,
  type ReadEntry,
} from '../entry/read.ts'
import type { Line } from './line.ts'
import { compareLines, countsAt } from './order.ts'
import type { Problems } from './problems.ts'

export interface Corrected {
  /** Lines that somebody said are no second witness. */
  readonly apart: ReadonlySet<Line>
  /** Lines whose time somebody set. */
  readonly retimed: ReadonlySet<Line>
}

interface Sets {
  readonly apart: Set<Line>
  readonly retimed: Set<Line>
}

/** Changes standing, time and reason of `lines`, and what holds instead. They are not in order afterwards. */
export function applyCorrections(
  lines: readonly Line[],
  corrections: readonly Line[],
  problems: Problems,
): Corrected {
  const sets: Sets = { apart: new Set(), retimed: new Set() }
  if (corrections.length === 0) return sets
  const targets = targetsOf(lines)
  for (const line of [...corrections].sort(compareLines)) {
    const correction = line.entry as EntryOf<'correction.1'>
    const target = targets.get(correction.body.target)
    if (!target || target.standing === 'correction') {
      problems.push({ kind: 'correctionAstray', entries: [correction.id], sentence: ASTRAY })
      continue
    }
    follow(target, correction, problems)
    change(target, correction, { sets, problems })
  }
  return sets
}

const ASTRAY =
  'A correction is of an entry that is not here, or is itself a correction. It changes nothing.'
const CLASH = 'Two corrections of one entry were made unaware of each other. The later one holds.'
const MALFORMED = 'A correction puts in what does not fit the entry. It changes nothing.'

/** Most corrections follow what they correct within a few entries; only for the others all ids are compared. */
const NEAR = 64

function targetsOf(lines: readonly Line[]): ReadonlyMap<string, Line> {
  const targets = new Map<string, Line>()
  const far = new Set<string>()
  lines.forEach((line, place) => {
    if (line.standing !== 'correction') return
    const { target } = (line.entry as EntryOf<'correction.1'>).body
    const near = nearBefore(lines, place, target)
    if (near) targets.set(target, near)
    else far.add(target)
  })
  if (far.size === 0) return targets
  for (const line of lines) if (far.has(line.entry.id)) targets.set(line.entry.id, line)
  return targets
}

function nearBefore(lines: readonly Line[], place: number, id: string): Line | undefined {
  for (let i = place - 1; i >= 0 && i >= place - NEAR; i -= 1) {
    if (lines[i]?.entry.id === id) return lines[i]
  }
  return undefined
}

/** The chain goes on, whatever comes of the change. */
function follow(target: Line, correction: EntryOf<'correction.1'>, problems: Problems): void {
  if (correction.body.basedOn !== target.basedOn) {
    const entries = [target.entry.id, target.basedOn, correction.id]
    problems.push({ kind: 'correctionClash', entries: [...new Set(entries)], sentence: CLASH })
  }
  target.basedOn = correction.id
}

function change(
  target: Line,
  correction: EntryOf<'correction.1'>,
  { sets, problems }: { readonly sets: Sets; readonly problems: Problems },
): void {
  const { change, reason } = correction.body
  const body = change.what === 'replace' ? change.body : undefined
  const corrected = body === undefined ? undefined : withBody(target.entry, body)
  if (body !== undefined && !corrected) {
    const entries = [target.entry.id, correction.id]
    problems.push({ kind: 'unread', entries, sentence: MALFORMED })
    return
  }
  restore(target, sets)
  target.reason = reason
  if (change.what === 'void') {
    target.standing = 'voided'
    return
  }
  if (corrected) target.corrected = corrected
  if (change.at !== undefined) {
    target.at = change.at
    sets.retimed.add(target)
  }
  if (change.apart) sets.apart.add(target)
  if (corrected || (change.at !== undefined && !isUnread(target.entry)))
    target.standing = 'corrected'
}

function restore(target: Line, sets: Sets): void {
  target.standing = isUnread(target.entry) ? 'unread' : 'holds'
  target.at = countsAt(target.entry)
  if (target.corrected) delete target.corrected
  sets.retimed.delete(target)
  sets.apart.delete(target)
}

/** The entry as it holds: a malformed one is mended by a body that fits its kind. */
function withBody(entry: LogEntry, body: unknown): ReadEntry | undefined {
  if (!isKnownKind(entry.kind) || bodyProblem(entry.kind, body) !== undefined) return undefined
  if (!isUnread(entry)) return { ...entry, body } as ReadEntry
  const { unread: _unread, why: _why, ...envelope } = entry
  return { ...envelope, body } as ReadEntry
}
