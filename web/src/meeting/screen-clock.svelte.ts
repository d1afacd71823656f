/**
 * This screen's clock: feeds the filter of `@pitlamp/sync` with the device's two clocks, and ticks. Every
 * screen ticks at the same tenths of a second of the server's time, so that figures turn over together.
 */
import type { ClockStanding, MeetingClock } from '@pitlamp/contract'
import {
  addSample,
  heardEpoch,
  newScreenClock,
  noticeStep,
  probesWanted,
  reckon,
  startOver,
  type Instants,
  type ProbeSample,
  type ScreenClock as Filter,
  type WallReckoning,
} from '@pitlamp/sync'
import type { ClockShown } from './port.ts'

const TICK_REAL_MS = 100
const BEAT_REAL_MS = 1_000

interface Surroundings {
  /** What an earlier run of this screen knew. */
  readonly kept: WallReckoning | undefined
  readonly keep: (wall: WallReckoning) => void
  readonly burst: (probes: number) => void
  /** Once a second, visible or not. */
  readonly beat: () => void
  /** The screen is looked at again, or may be: one repaint. */
  readonly woke: () => void
}

export class ScreenClock {
  /** Meeting time at the last tick. */
  now = $state(0)
  shown = $state.raw<ClockShown>({ standing: 'notSure', boundMs: 0 })
  #meetingClock: MeetingClock
  #filter: Filter
  #doubt: ClockStanding['doubt']
  readonly #around: Surroundings
  #ticking: ReturnType<typeof setTimeout> | undefined
  #beating: ReturnType<typeof setInterval> | undefined

  constructor(meetingClock: MeetingClock, around: Surroundings) {
    this.#meetingClock = meetingClock
    this.#around = around
    this.#filter = newScreenClock(instants(), around.kept)
    this.#look()
  }

  start(): void {
    document.addEventListener('visibilitychange', this.#wake)
    addEventListener('pageshow', this.#wake)
    addEventListener('online', this.#wake)
    this.#beating = setInterval(() => this.#beat(), BEAT_REAL_MS)
    this.#tick()
  }

  stop(): void {
    document.removeEventListener('visibilitychange', this.#wake)
    removeEventListener('pageshow', this.#wake)
    removeEventListener('online', this.#wake)
    clearInterval(this.#beating)
    clearTimeout(this.#ticking)
  }

  /** Meeting time this very moment, in whole milliseconds, and how far off it may be. */
  read(): { readonly at: number; readonly atBoundMs: number; readonly epoch: number } {
    const { serverMs, boundMs, epoch } = reckon(this.#filter, performance.now())
    const { anchorServerMs, anchorMeetingMs, rate } = this.#meetingClock
    return {
      at: Math.max(0, Math.round(anchorMeetingMs + (serverMs - anchorServerMs) * rate)),
      atBoundMs: Math.min(DAY_MS, Math.ceil(boundMs * rate)),
      epoch,
    }
  }

  /** What is said of the server's time on a new connection. */
  get wall(): WallReckoning | undefined {
    return this.#filter.wall
  }

  /** A probe was answered. */
  sampled(sample: ProbeSample): void {
    this.#filter = addSample(this.#filter, sample)
    const { wall } = this.#filter
    if (wall) this.#around.keep(wall)
    this.#look()
  }

  /** The server says how its clock stands; the meeting's own may have moved with it. */
  said({ epoch, doubt }: ClockStanding, meetingClock = this.#meetingClock): void {
    this.#filter = heardEpoch(this.#filter, epoch)
    this.#doubt = doubt
    this.#meetingClock = meetingClock
    this.#burstWhereWanted()
    this.#look()
  }

  /** The line is new: what was known of it says little. */
  reconnected(): void {
    this.#filter = startOver(this.#filter, instants())
    this.#burstWhereWanted()
  }

  readonly #wake = (): void => {
    if (document.visibilityState === 'hidden') {
      clearTimeout(this.#ticking)
      return
    }
    this.reconnected()
    this.#around.woke()
    this.#tick()
  }

  #tick(): void {
    clearTimeout(this.#ticking)
    this.#look()
    if (document.visibilityState === 'hidden') return
    const { serverMs } = reckon(this.#filter, performance.now())
    this.#ticking = setTimeout(() => this.#tick(), TICK_REAL_MS - (serverMs % TICK_REAL_MS))
  }

  #beat(): void {
    this.#filter = noticeStep(this.#filter, instants())
    this.#burstWhereWanted()
    this.#around.beat()
  }

  #burstWhereWanted(): void {
    const probes = probesWanted(this.#filter)
    if (probes > 0) this.#around.burst(probes)
  }

  #look(): void {
    this.now = this.read().at
    const { standing, boundMs } = reckon(this.#filter, performance.now())
    const shown = { standing, boundMs: Math.ceil(boundMs), doubt: this.#doubt }
    const before = this.shown
    if (
      before.standing !== shown.standing ||
      before.boundMs !== shown.boundMs ||
      before.doubt !== shown.doubt
    ) {
      this.shown = shown
    }
  }
}

const DAY_MS = 86_400_000

function instants(): Instants {
  return { localMs: performance.now(), dateMs: Date.now() }
}
