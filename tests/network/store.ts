/** What a screen has on its own disk: exactly what `keep` effects say, each a transaction, in their order. */
import type { Entry, RecordedEntry } from '@pitlamp/race'
import type { Keep, Kept, Pending, SetAside } from '@pitlamp/sync'

export class Store {
  readonly #device: string
  readonly #confirmed = new Map<number, RecordedEntry>()
  readonly #pending = new Map<string, Pending>()
  readonly #setAside = new Map<string, SetAside>()
  #waiting: Keep[] = []
  #n = 0

  constructor(device: string) {
    this.#device = device
  }

  /** A press is counted and stored in one transaction, after what was asked for before it. */
  press(make: (n: number) => Entry): Entry {
    this.flush()
    this.#n += 1
    const entry = make(this.#n)
    this.#pending.set(entry.id, { entry })
    return entry
  }

  ask(keep: Keep): void {
    this.#waiting.push(keep)
  }

  flush(): void {
    for (const keep of this.#waiting) this.#commit(keep)
    this.#waiting = []
  }

  /** As a reload finds it; what was asked for and not written yet is lost. */
  read(): Kept {
    this.#waiting = []
    return {
      device: this.#device,
      confirmed: [...this.#confirmed.values()],
      pending: [...this.#pending.values()],
      setAside: [...this.#setAside.values()],
    }
  }

  #commit({ cutAfter, confirmed, pending, setAside, settled }: Keep): void {
    if (cutAfter !== undefined) {
      for (const seq of [...this.#confirmed.keys()]) if (seq > cutAfter) this.#confirmed.delete(seq)
    }
    for (const entry of confirmed ?? []) this.#confirmed.set(entry.seq, entry)
    for (const one of pending ?? []) {
      this.#setAside.delete(one.entry.id)
      this.#pending.set(one.entry.id, one)
    }
    for (const one of setAside ?? []) {
      this.#pending.delete(one.entry.id)
      this.#setAside.set(one.entry.id, one)
    }
    for (const id of settled ?? []) {
      this.#pending.delete(id)
      this.#setAside.delete(id)
    }
  }
}
