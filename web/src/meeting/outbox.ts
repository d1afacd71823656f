/**
 * The log and the outbox on this device. A press is written here, with its number, before anything calls
 * it kept; the log as the server confirmed it is kept beside it, so that a reload needs no server.
 */
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Keep } from '@pitlamp/sync'
import type { Counter, Store } from './store.ts'

/** A press as it was made: everything but its place in the device's count. */
export type Press = Omit<Entry, 'n'>
export type WhyNotKept = 'full' | 'unavailable'
export interface Recorded {
  readonly entry: Entry
  /** Undefined where it is kept on this device. */
  readonly notKept?: WhyNotKept
}

const NOTHING: Counter = { n: 0, lastAt: 0, epoch: 0 }

export class Outbox {
  readonly #meeting: string
  readonly #device: string
  readonly #store: Store | undefined
  /** Counts on where the store does not: a press that could not be kept has its number all the same. */
  #counter = NOTHING

  constructor(of: { meeting: string; device: string; store: Store | undefined }) {
    this.#meeting = of.meeting
    this.#device = of.device
    this.#store = of.store
  }

  /** Numbers the press and keeps it, in one transaction. Never rejects. */
  async record(press: Press): Promise<Recorded> {
    const { entry, fault } = await this.#write(press).then(
      (entry) => ({ entry, fault: undefined }),
      (fault: unknown) => ({ entry: undefined, fault }),
    )
    if (entry) return { entry }
    this.#counter = next(this.#counter, press)
    return { entry: numbered(press, this.#counter), notKept: whyNotKept(fault) }
  }

  async #write(press: Press): Promise<Entry> {
    if (!this.#store) throw new StoreMissing()
    const rooms = ['counters', 'pending'] as const
    // Strict: on the disk, not only on its way there, when this comes back.
    const transaction = this.#store.transaction(rooms, 'readwrite', { durability: 'strict' })
    const counters = transaction.objectStore('counters')
    const stored = (await counters.get(this.#counterKey)) ?? NOTHING
    const counter = next(stored.n > this.#counter.n ? stored : this.#counter, press)
    const entry = numbered(press, counter)
    await Promise.all([
      counters.put(counter, this.#counterKey),
      transaction.objectStore('pending').put({ entry }, [this.#meeting, entry.id]),
      transaction.done,
    ])
    this.#counter = counter
    return entry
  }

  /** What the machine asks to be stored, in one transaction. Rejects where the device does not take it. */
  async keep(what: Keep): Promise<void> {
    const counter = this.#countedBy(what.confirmed ?? [])
    if (!this.#store) return
    const meeting = this.#meeting
    const transaction = this.#store.transaction(
      ['log', 'pending', 'setAside', 'counters'],
      'readwrite',
    )
    const log = transaction.objectStore('log')
    const pending = transaction.objectStore('pending')
    const setAside = transaction.objectStore('setAside')
    const writes: Promise<unknown>[] = [transaction.done]
    const { cutAfter } = what
    if (cutAfter !== undefined) {
      writes.push(log.delete(IDBKeyRange.bound([meeting, cutAfter], [meeting, []], true)))
    }
    for (const entry of what.confirmed ?? []) writes.push(log.put(entry, [meeting, entry.seq]))
    for (const waiting of what.pending ?? []) {
      const key: [string, string] = [meeting, waiting.entry.id]
      writes.push(pending.put(waiting, key), setAside.delete(key))
    }
    for (const aside of what.setAside ?? []) {
      const key: [string, string] = [meeting, aside.entry.id]
      writes.push(setAside.put(aside, key), pending.delete(key))
    }
    for (const id of what.settled ?? []) {
      writes.push(pending.delete([meeting, id]), setAside.delete([meeting, id]))
    }
    if (counter) writes.push(transaction.objectStore('counters').put(counter, this.#counterKey))
    await Promise.all(writes)
  }

  /** A device whose storage was emptied learns from its own entries in the log how far it had counted. */
  #countedBy(confirmed: readonly RecordedEntry[]): Counter | undefined {
    const before = this.#counter
    for (const { device, n, at, epoch } of confirmed) {
      if (device === this.#device && n > this.#counter.n) this.#counter = { n, lastAt: at, epoch }
    }
    return this.#counter === before ? undefined : this.#counter
  }

  get #counterKey(): [string, string] {
    return [this.#meeting, this.#device]
  }
}

class StoreMissing extends Error {}

/**
 * Never below the last time given out, as long as the server's clock is read the same way. Once the
 * captain has set it, the new reading counts: holding on to the old one would date every press wrong.
 */
function next(counter: Counter, press: Press): Counter {
  const floor = counter.epoch === press.epoch ? counter.lastAt : 0
  return { n: counter.n + 1, lastAt: Math.max(press.at, floor), epoch: press.epoch }
}

function numbered(press: Press, counter: Counter): Entry {
  return { ...press, n: counter.n, at: counter.lastAt }
}

function whyNotKept(fault: unknown): WhyNotKept {
  return fault instanceof DOMException && fault.name === 'QuotaExceededError'
    ? 'full'
    : 'unavailable'
}
