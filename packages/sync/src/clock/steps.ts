/** When the probes a clock stands on are worth nothing any more: sleep, a moved wall clock, another epoch. */
import { A_DAY_MS, SET_WITHIN_MS } from './bounds.ts'
import { reckon, shownOffsetAt } from './reckon.ts'
import { BURST_PROBES, type Instants, type ScreenClock } from './screen-clock.ts'

/** Between two comparisons the device's clocks differ by more than this only if one slept or was set. */
export const STEP_MS = 250

/** Call every second and on waking: starts over by itself when the device's two clocks disagree. */
export function noticeStep(clock: ScreenClock, now: Instants): ScreenClock {
  if (Math.abs(gapMs(clock, now)) > STEP_MS) return startOver(clock, now)
  return { ...clock, compared: now }
}

/**
 * Call on waking, `pageshow`, `online` and reconnecting. Probes are discarded and a burst is wanted; meanwhile it
 * goes on counting. Without a step it is as sure as it was, so that a screen looked at while the server is gone
 * loses nothing by it. Where local time fell behind the wall clock the device slept, so it follows the wall; how far
 * off that may be says so, since the wall clock may as well have been set.
 */
export function startOver(clock: ScreenClock, now: Instants): ScreenClock {
  const gap = gapMs(clock, now)
  const fresh = { ...discarded(clock, now.localMs), compared: now }
  const doubtMs = Math.abs(gap)
  if (doubtMs <= STEP_MS) return fresh
  const { line, wall } = fresh
  return {
    ...fresh,
    line: { ...line, offsetMs: line.offsetMs + Math.max(0, gap) },
    heldBoundMs: Math.min(A_DAY_MS, fresh.heldBoundMs + doubtMs),
    settling: true,
    wall: wall && { ...wall, boundMs: Math.min(A_DAY_MS, wall.boundMs + doubtMs) },
  }
}

/** The server's clock was set: what was reckoned by its older reading is worth nothing, and is only counted on from. */
export function heardEpoch(clock: ScreenClock, epoch: number): ScreenClock {
  if (epoch <= clock.epoch) return clock
  const fresh = discarded(clock, clock.compared.localMs)
  // Its epoch tells an old probe from a new one, whenever it was begun.
  const { sinceMs } = clock
  return { ...fresh, epoch, sinceMs, heldBoundMs: A_DAY_MS, settling: true, wall: undefined }
}

/** Counts on from what was shown, without any probe. */
export function discarded(clock: ScreenClock, localMs: number): ScreenClock {
  const { boundMs } = reckon(clock, localMs)
  return {
    ...clock,
    samples: [],
    last: undefined,
    line: { atMs: localMs, offsetMs: shownOffsetAt(clock, localMs), slope: clock.line.slope },
    heldBoundMs: boundMs,
    slew: { fromMs: localMs, restMs: 0 },
    sinceMs: localMs,
    burst: BURST_PROBES,
    settling: clock.settling || boundMs >= SET_WITHIN_MS,
  }
}

/** How much further the wall clock has gone than local time since they were last compared. */
function gapMs({ compared }: ScreenClock, now: Instants): number {
  return now.dateMs - compared.dateMs - (now.localMs - compared.localMs)
}
