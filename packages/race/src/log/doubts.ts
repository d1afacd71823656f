/** Entries whose time cannot be vouched for, until somebody sets their time by hand. */
import type { LogEntry } from '../entry/read.ts'
import type { Line } from './line.ts'
import { entryCount, type Problems } from './problems.ts'

/** How far ahead of the server a press may be, beyond what its device owned up to. Common practice, no source. */
const SLACK_MS = 2_000
/** Beyond this a screen says it is not sure of the time. */
const NOT_SURE_MS = 500

/** `countsAt` is when the entry counts, uncorrected: earlier than its own time only where that is ahead. */
export function isInDoubt(entry: LogEntry, countsAt: number): boolean {
  if (entry.atBoundMs > NOT_SURE_MS) return true
  return countsAt < entry.at && entry.at - countsAt > entry.atBoundMs + SLACK_MS
}

/** One problem a device, so that a screen which was unsure for an hour does not flood the list. */
export function listDoubts(
  lines: readonly Line[],
  retimed: ReadonlySet<Line>,
  problems: Problems,
): void {
  const byDevice = new Map<string, string[]>()
  for (const line of lines) {
    const { entry } = line
    if (line.standing === 'voided' || retimed.has(line)) continue
    const ids = byDevice.get(entry.device)
    if (ids) ids.push(entry.id)
    else byDevice.set(entry.device, [entry.id])
  }
  for (const ids of byDevice.values()) {
    const sentence = `The time of ${entryCount(ids.length)} is in doubt: the device’s clock was not sure.`
    problems.push({ kind: 'timeInDoubt', entries: ids, sentence })
  }
}
