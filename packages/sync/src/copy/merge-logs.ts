/** The logs of several copies of one meeting become one, entry by entry. */
import type { MeetingCopy, Unsent } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import { contiguous, isSame } from '../log/confirmed.ts'
import { firstBy } from './laid-down.ts'

/** One id under which copies have different content: which of them was left out. */
export interface Clash {
  readonly entry: string
  readonly device: string
  readonly n: number
  /** What stands was recorded by a server, or was on a device only. */
  readonly stands: 'recorded' | 'unsent'
}

type Log = Pick<MeetingCopy, 'recorded' | 'unsent'>
export interface MergedLogs extends Log {
  readonly clashes: readonly Clash[]
}

/** What counts first stands first: of logs that are equally long the first one keeps its numbers. */
export function mergeLogs(copies: readonly Log[]): MergedLogs {
  const sound = copies.map((log) => ({ log, run: soundRun(log.recorded) }))
  const [longest, ...others] = firstBy(sound, ({ run }) => [-run.length])
  const clashes = new Map<string, Clash>()
  const recorded = new Map<string, RecordedEntry>()
  for (const entry of [longest, ...others].flatMap((one) => bySeq(one?.log.recorded ?? []))) {
    const stands = recorded.get(entry.id)
    if (!stands) recorded.set(entry.id, entry)
    else noteClash(clashes, { stands, other: entry })
  }
  return {
    recorded: numbered(longest?.run ?? [], [...recorded.values()]),
    unsent: unsentBeside(recorded, { of: copies, clashes }),
    clashes: [...firstBy([...clashes.values()], ({ entry }) => [entry])],
  }
}

/** Numbers 1, 2, 3 … up to the first gap, and each entry once, whatever was done to the file. */
function soundRun(recorded: readonly RecordedEntry[]): RecordedEntry[] {
  const once = new Map<string, RecordedEntry>()
  for (const entry of bySeq(recorded)) if (!once.has(entry.id)) once.set(entry.id, entry)
  return contiguous(0, [...once.values()])
}

function bySeq(recorded: readonly RecordedEntry[]): readonly RecordedEntry[] {
  return firstBy(recorded, ({ seq, id }) => [seq, id])
}

/** The longest log keeps its numbers; what else was recorded follows on, each device's in the order of its count. */
function numbered(log: readonly RecordedEntry[], all: readonly RecordedEntry[]): RecordedEntry[] {
  const has = new Set(log.map(({ id }) => id))
  const rest = firstBy(
    all.filter(({ id }) => !has.has(id)),
    inOrderOfCount,
  )
  return [...log, ...rest].map((entry, place) =>
    entry.seq === place + 1 ? entry : { ...entry, seq: place + 1 },
  )
}

interface Beside {
  readonly of: readonly Log[]
  readonly clashes: Map<string, Clash>
}

function unsentBeside(
  recorded: ReadonlyMap<string, RecordedEntry>,
  { of, clashes }: Beside,
): Unsent[] {
  const found = new Map<string, Unsent>()
  for (const unsent of firstBy(
    of.flatMap((log) => log.unsent),
    moreHopeful,
  )) {
    const { entry } = unsent
    const stands = recorded.get(entry.id) ?? found.get(entry.id)?.entry
    if (!stands) found.set(entry.id, unsent)
    else if (!unsent.refused) noteClash(clashes, { stands, other: entry })
  }
  return [...firstBy([...found.values()], (one) => inOrderOfCount(one.entry))]
}

/** What one copy calls refused was sent again, or will be, by a device that does not. */
function moreHopeful({ refused, role, entry }: Unsent): readonly (number | string)[] {
  return [refused ? 1 : 0, role === undefined ? 1 : 0, role ?? '', JSON.stringify(entry)]
}

function inOrderOfCount({ device, n, id }: Entry): readonly (number | string)[] {
  return [device, n, id]
}

function noteClash(
  clashes: Map<string, Clash>,
  { stands, other }: { readonly stands: Entry | RecordedEntry; readonly other: Entry },
): void {
  if (isSame(stands, other)) return
  const { id: entry, device, n } = stands
  clashes.set(entry, { entry, device, n, stands: 'seq' in stands ? 'recorded' : 'unsent' })
}
