/** Entries in any order, some twice → lines in log order with what became of each. */
import { isUnread, type EntryOf, type LogEntry } from '../entry/read.ts'
import type { DocumentsState } from '../fold/state.ts'
import { adopt } from './adoptions.ts'
import { applyCorrections } from './corrections.ts'
import { isInDoubt, listDoubts } from './doubts.ts'
import type { Line } from './line.ts'
import { firstOfEach, Numbers } from './numbers.ts'
import { countsAt, sortLines } from './order.ts'
import type { Problems } from './problems.ts'
import { listUnread } from './unread.ts'
import { findWitnesses } from './witnesses.ts'

export interface ReadLog {
  readonly lines: Line[]
  readonly documents: DocumentsState
  /** Second witnesses, each with the entry that holds in its place. */
  readonly holders: ReadonlyMap<string, string>
}

export function readLog(entries: readonly LogEntry[], problems: Problems): ReadLog {
  const few: Few = { corrections: [], adoptions: [], unread: [], doubtful: [] }
  const lines = linesOf(entries, few, problems)
  const { apart, retimed } = applyCorrections(lines, few.corrections, problems)
  sortLines(lines)
  for (const some of [few.adoptions, few.unread, few.doubtful]) sortLines(some)
  listUnread(few.unread, problems)
  listDoubts(few.doubtful, retimed, problems)
  const documents = adopt(few.adoptions, problems)
  const holders = findWitnesses(lines, apart)
  return { lines, documents, holders }
}

/**
 * Each device's numbers rise as they arrive unless something came twice or out of turn. Only then is every
 * entry looked up by its id, which costs more than the rest of the fold.
 */
function linesOf(entries: readonly LogEntry[], few: Few, problems: Problems): Line[] {
  const numbers = new Numbers()
  const lines = entries.map((entry) => {
    numbers.add(entry)
    return picked(lineOf(entry), few)
  })
  if (numbers.areRising) {
    numbers.listGaps(entries, problems)
    return lines
  }
  for (const some of Object.values(few)) some.length = 0
  const once = firstOfEach(entries)
  numbers.listGaps(once, problems)
  return once.map((entry) => picked(lineOf(entry), few))
}

/** Lines that need a look before the rest, picked out in the one pass that makes them. */
type Few = Readonly<Record<'corrections' | 'adoptions' | 'unread' | 'doubtful', Line[]>>

function picked(line: Line, few: Few): Line {
  const { entry } = line
  if (isInDoubt(entry, line.at)) few.doubtful.push(line)
  if (line.standing === 'correction') few.corrections.push(line)
  else if (line.standing === 'unread') few.unread.push(line)
  if (entry.kind === 'adopted.1') few.adoptions.push(line)
  return line
}

function lineOf(entry: LogEntry): Line {
  const { id, role } = entry
  const at = countsAt(entry)
  const standing = isUnread(entry) ? 'unread' : 'holds'
  if (entry.kind === 'correction.1' && standing === 'holds') {
    const { reason } = (entry as EntryOf<'correction.1'>).body
    // Written out: adding to a spread makes the engine build each line anew, property by property.
    return role === undefined
      ? { entry, at, standing: 'correction', basedOn: id, reason }
      : { entry, at, standing: 'correction', basedOn: id, reason, role }
  }
  return role === undefined
    ? { entry, at, standing, basedOn: id }
    : { entry, at, standing, basedOn: id, role }
}
