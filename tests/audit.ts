/** Compares the log a server serves with what it acknowledged. */
import { entriesPageSchema } from '@pitlamp/contract'
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Device } from './device.ts'

export interface Acknowledged {
  readonly entry: Entry
  readonly seq: number
}

/** Who pressed: what it was told is saved, by entry id, and how many entries it has made. */
export interface Teller {
  readonly acknowledged: ReadonlyMap<string, Acknowledged>
  readonly n: number
}

export interface Audit {
  readonly acknowledged: number
  /** Acknowledged, and not in the log, or in it with other bytes or under another number. */
  readonly lost: number
  /** Places where the log's numbers are not 1, 2, 3 … */
  readonly gaps: number
  /** Entries that are in the log more than once. */
  readonly twice: number
  /** Made by a device and not in the log. */
  readonly unsent: number
}

export function audit(log: readonly RecordedEntry[], tellers: readonly Teller[]): Audit {
  const inLog = new Map(log.map((entry) => [entry.id, entry]))
  const acknowledged = tellers.flatMap((teller) => [...teller.acknowledged.values()])
  const made = tellers.reduce((sum, { n }) => sum + n, 0)
  return {
    acknowledged: acknowledged.length,
    lost: acknowledged.filter((told) => !isThere(told, inLog.get(told.entry.id))).length,
    gaps: log.filter(({ seq }, index) => seq !== index + 1).length,
    twice: log.length - inLog.size,
    unsent: made - inLog.size,
  }
}

function isThere({ entry, seq }: Acknowledged, found: RecordedEntry | undefined): boolean {
  if (found?.seq !== seq) return false
  const { seq: _seq, recordedAt: _at, role: _role, ...asSent } = found
  return JSON.stringify(inOneOrder(asSent)) === JSON.stringify(inOneOrder(entry))
}

/** The envelope's fields; the body is text among them and stays as it is, byte for byte. */
function inOneOrder(entry: object): readonly (readonly [string, unknown])[] {
  return Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1))
}

export async function wholeLog(device: Device, meeting: string): Promise<readonly RecordedEntry[]> {
  const log: RecordedEntry[] = []
  for (;;) {
    const path = `/api/meetings/${meeting}/entries?after=${log.length}`
    const page = entriesPageSchema.parse(await device.call('GET', path))
    log.push(...page.entries)
    if (page.to === page.last || page.entries.length === 0) return log
  }
}
