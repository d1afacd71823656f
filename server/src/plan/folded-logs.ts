/** What the logs say, folded on the server as on every screen. */
import { fold, readEntry, type LogEntry, type State } from '@pitlamp/race'
import type { Storage } from '../storage/port.ts'
import { wholeLog } from '../storage/reads/whole-log.ts'

export interface FoldedLog {
  readonly entries: readonly LogEntry[]
  /** The last sequence number that was folded. */
  readonly seq: number
  readonly state: State
}

/** Links are opened by many at once: the logs of a few meetings stay, and only what is new is read. */
const MEETINGS_KEPT = 4
const NOTHING: FoldedLog = { entries: [], seq: 0, state: fold([]) }

export class FoldedLogs {
  readonly #storage: Pick<Storage, 'read'>
  readonly #kept = new Map<string, FoldedLog>()

  constructor(storage: Pick<Storage, 'read'>) {
    this.#storage = storage
  }

  async of(meeting: string): Promise<FoldedLog> {
    const before = this.#kept.get(meeting) ?? NOTHING
    const folded = await this.#readOn(meeting, before)
    this.#kept.delete(meeting)
    this.#kept.set(meeting, folded)
    const [oldest] = this.#kept.keys()
    if (oldest !== undefined && this.#kept.size > MEETINGS_KEPT) this.#kept.delete(oldest)
    return folded
  }

  async #readOn(meeting: string, before: FoldedLog): Promise<FoldedLog> {
    const news = await wholeLog(this.#storage.read, meeting, before.seq)
    if (news.length === 0) return before
    const entries = [...before.entries, ...news.map(readEntry)]
    return { entries, seq: news.at(-1)?.seq ?? before.seq, state: fold(entries) }
  }
}
