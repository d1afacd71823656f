/** The log as a state: folded whole, only when the log has changed, and not while nobody looks. */
import {
  emptyState,
  fold,
  readEntry,
  type Entry,
  type LogEntry,
  type RecordedEntry,
  type Role,
} from '@pitlamp/race'
import { view, type SyncState } from '@pitlamp/sync'

/** A fold that takes longer shows on a slow tablet. Common practice, no source. */
const LONG_MS = 8

export class Folded {
  state = $state.raw(emptyState)
  #log: SyncState
  #role: Role
  #stale = true
  #asked = false
  #tookMs = 0
  /** Bodies are parsed once; the machine hands out the same object for the same entry. */
  readonly #read = new WeakMap<Entry | RecordedEntry, LogEntry>()

  constructor(log: SyncState, role: Role) {
    this.#log = log
    this.#role = role
    this.freshen()
  }

  change(log: SyncState, role: Role): void {
    const before = this.#log
    const same =
      before.confirmed === log.confirmed &&
      before.pending === log.pending &&
      before.setAside === log.setAside &&
      this.#role === role
    this.#log = log
    this.#role = role
    if (same) return
    this.#stale = true
    if (this.#asked || document.visibilityState === 'hidden') return
    this.#asked = true
    this.#later(() => {
      this.#asked = false
      this.freshen()
    })
  }

  /** What happens at once is folded once; a long log that arrives page after page, a quarter of the time at most. */
  #later(fold: () => void): void {
    if (this.#tookMs < LONG_MS) queueMicrotask(fold)
    else setTimeout(fold, this.#tookMs * 3)
  }

  freshen(): void {
    if (!this.#stale) return
    this.#stale = false
    const beganMs = performance.now()
    this.state = fold(view(this.#log).map((entry) => this.#readOnce(entry)))
    this.#tookMs = performance.now() - beganMs
  }

  #readOnce(entry: Entry | RecordedEntry): LogEntry {
    let read = this.#read.get(entry)
    if (read === undefined) {
      read = readEntry(entry)
      this.#read.set(entry, read)
    }
    // What is only here counts as coming from what this screen is.
    return read.role === undefined ? { ...read, role: this.#role } : read
  }
}
