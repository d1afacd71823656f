/** Log order: when an entry counts, then its device, then its number there. */
import type { LogEntry } from '../entry/read.ts'
import type { Line } from './line.ts'

/** When an entry counts while nobody corrected it: never later than the server took it. */
export function countsAt(entry: LogEntry): number {
  const { at, recordedAt } = entry
  return recordedAt !== undefined && recordedAt < at ? recordedAt : at
}

/** The order of entries as made, corrections of their times aside. By code units, in every locale the same. */
export function compareEntries(a: LogEntry, b: LogEntry): number {
  return countsAt(a) - countsAt(b) || compareOrigin(a, b)
}

export function compareLines(a: Line, b: Line): number {
  return a.at - b.at || compareOrigin(a.entry, b.entry)
}

/** Device, then number; the id decides only where a device gave one number twice. */
function compareOrigin(a: LogEntry, b: LogEntry): number {
  if (a.device !== b.device) return a.device < b.device ? -1 : 1
  return a.n - b.n || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
}

/**
 * Sorts in place. A log arrives nearly in order, so a line that stands too late is moved back to its place
 * (insertion sort, the place by halving); where that gets long, a merge sort takes over.
 */
export function sortLines(lines: Line[]): void {
  let stepsLeft = lines.length * 8
  for (let i = 1; i < lines.length; i += 1) {
    const line = lines[i] as Line
    if (compareLines(lines[i - 1] as Line, line) <= 0) continue
    const to = placeOf(line, lines, i)
    for (let j = i; j > to; j -= 1) lines[j] = lines[j - 1] as Line
    lines[to] = line
    stepsLeft -= i - to
    if (stepsLeft < 0) {
      lines.sort(compareLines)
      return
    }
  }
}

/** The first place among the `end` lines in order before which this one does not belong later. */
function placeOf(line: Line, lines: readonly Line[], end: number): number {
  let from = 0
  let to = end
  while (from < to) {
    const middle = (from + to) >> 1
    if (compareLines(lines[middle] as Line, line) > 0) to = middle
    else from = middle + 1
  }
  return from
}
