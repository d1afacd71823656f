/** How long entries take from whichever process took them in to the screens of this one. */
import { serverTime, type Meeting, type MeetingClock } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { Metrics } from '../metrics/metrics.ts'

export class NewsLag {
  readonly #metrics: Pick<Metrics, 'told'>
  readonly #now: () => number
  readonly #clocks = new Map<string, MeetingClock>()

  /** `now` is server time. */
  constructor(metrics: Pick<Metrics, 'told'>, now: () => number) {
    this.#metrics = metrics
    this.#now = now
  }

  /** A screen of this process is in this meeting from now on. */
  watch({ id, clock }: Meeting): void {
    this.#clocks.set(id, clock)
  }

  told(meeting: string, entries: readonly RecordedEntry[]): void {
    const clock = this.#clocks.get(meeting)
    const last = entries.at(-1)
    if (clock && last) this.#metrics.told(this.#now() - serverTime(clock, last.recordedAt))
  }
}
