/**
 * Which devices wrote into a meeting. Its log is gone through once, when somebody asks first; from there on
 * the news say who joins them.
 */
import type { News } from '../storage/port.ts'

export class Writers {
  readonly #read: (meeting: string) => Promise<readonly string[]>
  readonly #known = new Map<string, Promise<Set<string>>>()

  constructor(read: (meeting: string) => Promise<readonly string[]>) {
    this.#read = read
  }

  of(meeting: string): Promise<ReadonlySet<string>> {
    const known = this.#known.get(meeting)
    if (known) return known
    const reading = this.#read(meeting).then((devices) => new Set(devices))
    this.#known.set(meeting, reading)
    reading.catch(() => this.#known.delete(meeting))
    return reading
  }

  /** Where it is not told who wrote, the log is gone through again. */
  hear({ meeting, entries }: News): void {
    if (entries.length === 0) this.#known.delete(meeting)
    this.wrote(meeting, entries)
  }

  wrote(meeting: string, entries: News['entries']): void {
    const add = (writers: Set<string>) => {
      for (const { device } of entries) writers.add(device)
    }
    this.#known.get(meeting)?.then(add, () => undefined)
  }
}
