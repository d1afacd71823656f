/**
 * Server time has one owner: the machine's clock as it stood at the start, and monotonic time since. Steps of
 * the machine's clock while the server runs are noticed, logged and ignored.
 *
 * What outlives the process (`KeptTime`):
 * - `markMs`, the high-water mark, kept with every transaction and every second. At a start server time is the
 *   later of the mark and the machine's clock (moved by `shiftMs`), so it never goes back over a restart.
 * - `shiftMs`, what the machine's clock has to be moved by because the captain once set it. It holds over
 *   restarts until the machine's clock is right again: a step seen while running that brings the two together
 *   is taken off it, and where at a start the moved clock would lie behind the mark but the clock itself does
 *   not, it is dropped. What this cannot tell (a clock that was behind and was put right while the server was
 *   down) the devices tell. A step alone never makes a shift: after the next start the machine's clock counts.
 * - `epoch`, the reading of the clock that entries and devices name. It rises each time the captain sets it.
 *
 * The clock is in doubt when the machine's clock was more than 2 s behind the mark at the start, or when
 * devices that come back reckon, as their median, more than 2 s differently than their own bounds allow. Each
 * device counts once a run, with what it reckoned before this run; common practice, no source.
 */
import type { ClockStanding } from '@pitlamp/contract'
import type { KeptTime } from '../storage/commands/server-time.ts'
import { middleOf, type Reckoning } from './reckonings.ts'

export interface Clocks {
  /** The machine's clock, ms since 1970. */
  readonly wall: () => number
  /** Never goes back, any origin, ms with fractions. */
  readonly monotonic: () => number
  /** Other processes go by the same machine's clock: how far ahead of it server time is concerns them too. */
  readonly shared?: true
}

export const SYSTEM_CLOCKS: Clocks = {
  wall: () => Date.now(),
  monotonic: () => performance.now(),
}

const DOUBT_BEYOND_MS = 2_000
/** A machine's clock this close to ours needs no shift; smaller differences are the two clocks' drift. */
const STEP_BEYOND_MS = 500

type Why = 'behindItsMark' | 'devicesDiffer'

export class ServerTime {
  readonly #clocks: Clocks
  #base: number
  #since: number
  #shiftMs: number
  #epoch: number
  #why: Why | undefined
  #wallAhead: number
  readonly #reckonings: Reckoning[] = []
  readonly #met = new Set<string>()

  constructor(clocks: Clocks, kept: KeptTime | undefined) {
    this.#clocks = clocks
    const wall = clocks.wall()
    const { markMs, shiftMs, epoch } = kept ?? { markMs: 0, shiftMs: 0, epoch: 1 }
    const putRight = wall + shiftMs < markMs - DOUBT_BEYOND_MS && wall >= markMs - DOUBT_BEYOND_MS
    this.#shiftMs = putRight ? 0 : shiftMs
    const expected = wall + this.#shiftMs
    this.#base = Math.max(expected, markMs)
    this.#since = clocks.monotonic()
    this.#epoch = epoch
    this.#why = expected < markMs - DOUBT_BEYOND_MS ? 'behindItsMark' : undefined
    this.#wallAhead = wall - this.#base
  }

  /** Milliseconds since 1970, fractions included. */
  now(): number {
    return this.#base + (this.#clocks.monotonic() - this.#since)
  }

  get epoch(): number {
    return this.#epoch
  }

  /** What has to be on the disk for the next start. */
  kept(): KeptTime {
    return this.#keptAs({ markMs: this.now(), shiftMs: this.#shiftMs, epoch: this.#epoch })
  }

  #keptAs(kept: KeptTime): KeptTime {
    return this.#clocks.shared === true
      ? { ...kept, aheadMs: kept.markMs - this.#clocks.wall() }
      : kept
  }

  standing(): ClockStanding {
    const serverMs = Math.round(this.now())
    if (this.#why === undefined) return { epoch: this.#epoch, serverMs }
    const middle = middleOf(this.#reckonings)
    const devices = this.#reckonings.length
    const offered = middle === undefined ? {} : { offeredShiftMs: Math.round(middle.differsMs) }
    return { epoch: this.#epoch, serverMs, doubt: { why: this.#why, ...offered, devices } }
  }

  /**
   * A device says hello, with what it reckoned server time to be before it lost its connection, if it did.
   * Only its first hello in this run counts: later it has its time from us. One that knows a later epoch shows
   * that the store was put back from a copy older than that press of the captain's: screens go by nothing older,
   * so that epoch becomes ours, and is to be kept.
   * @returns whether the standing changed and has to be told
   */
  meet(device: string, reckoned?: { serverMs: number; boundMs: number; epoch: number }): boolean {
    if (this.#met.has(device)) return false
    this.#met.add(device)
    if (!reckoned || reckoned.epoch < this.#epoch) return false
    const isLater = reckoned.epoch > this.#epoch
    if (isLater) this.#reckonings.length = 0
    this.#epoch = reckoned.epoch
    this.#reckonings.push({ differsMs: reckoned.serverMs - this.now(), boundMs: reckoned.boundMs })
    if (this.#why === 'behindItsMark') return true
    const before = this.#why
    const middle = middleOf(this.#reckonings)
    const differ = middle && Math.abs(middle.differsMs) > DOUBT_BEYOND_MS + middle.boundMs
    this.#why = differ ? 'devicesDiffer' : undefined
    return isLater || before !== undefined || this.#why !== undefined
  }

  /** What the disk has to hold before `settle`: the clock as it will be. */
  settled(shiftMs: number): KeptTime {
    const markMs = this.now() + shiftMs
    const shift = Math.round(markMs - this.#clocks.wall())
    return this.#keptAs({
      markMs,
      shiftMs: Math.abs(shift) < STEP_BEYOND_MS ? 0 : shift,
      epoch: this.#epoch + 1,
    })
  }

  /** Server time as another process keeps it. A later epoch is a press of the captain's there: it ends the doubt. */
  adopt({ shiftMs, epoch, aheadMs = 0 }: KeptTime): void {
    const wall = this.#clocks.wall()
    this.#base = wall + aheadMs
    this.#since = this.#clocks.monotonic()
    this.#shiftMs = shiftMs
    this.#wallAhead = -aheadMs
    if (epoch <= this.#epoch) return
    this.#epoch = epoch
    this.#why = undefined
    this.#reckonings.length = 0
  }

  /** The captain's press: moves server time, ends the doubt, begins a new epoch. */
  settle(shiftMs: number, kept: KeptTime): void {
    this.#base += shiftMs
    this.#shiftMs = kept.shiftMs
    this.#epoch = kept.epoch
    this.#wallAhead = this.#clocks.wall() - this.now()
    this.#why = undefined
    this.#reckonings.length = 0
  }

  /**
   * Looks, once a second, whether somebody moved the machine's clock.
   * @returns by how much, where it was; server time did not follow
   */
  noticeStep(): number | undefined {
    const ahead = this.#clocks.wall() - this.now()
    const step = ahead - this.#wallAhead
    this.#wallAhead = ahead
    if (Math.abs(step) < STEP_BEYOND_MS) return undefined
    const shift = this.#shiftMs - Math.round(step)
    if (Math.abs(shift) < Math.abs(this.#shiftMs)) {
      this.#shiftMs = Math.abs(shift) < STEP_BEYOND_MS ? 0 : shift
    }
    return Math.round(step)
  }
}
