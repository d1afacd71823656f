/** The log as it happened: entries in any order → what they say, and what does not add up. */
import type { Kind } from '../entry/kinds/index.ts'
import type { LogEntry, ReadEntry } from '../entry/read.ts'
import { holds } from '../log/line.ts'
import { readLog } from '../log/read-log.ts'
import { newDraft, type Draft } from './draft.ts'
import { finish } from './finish.ts'
import { handlerOf, type AnyHandler } from './handlers/index.ts'
import type { Problem, State } from './state.ts'

/**
 * Always whole, total, and the same everywhere: no clock, no chance, whole numbers only. One entry given
 * twice counts once. Never throws and never refuses.
 */
export function fold(entries: readonly LogEntry[]): State {
  const problems: Problem[] = []
  const read = readLog(entries, problems)
  const draft: Draft = newDraft(read, problems)
  let kind: Kind | undefined
  let handle: AnyHandler | undefined
  for (const line of read.lines) {
    if (!holds(line)) continue
    // What holds could be read: what could not stands as unread or voided.
    const entry = (line.corrected ?? line.entry) as ReadEntry
    // Entries of one kind come in runs.
    if (entry.kind !== kind) {
      kind = entry.kind
      handle = handlerOf(kind)
    }
    handle?.(draft, entry, line.at)
  }
  return finish(draft)
}

export const emptyState: State = fold([])
