/** A probe's answer joins the clock: the best of each minute counts. */
import { SET_WITHIN_MS } from './bounds.ts'
import { lineThrough, offsetAt } from './line.ts'
import { reckon, shownOffsetAt } from './reckon.ts'
import { discarded, heardEpoch, noticeStep, STEP_MS } from './steps.ts'
import type { ProbeSample, Sample, ScreenClock } from './screen-clock.ts'

const MINUTE_MS = 60_000
const WINDOW_MS = 10 * MINUTE_MS
/** Corrections below this are slewed, larger ones jump. */
const JUMP_MS = 200

/**
 * Offset and round trip of Cristian 1989 and RFC 5905: offset = ((t1 − t0) + (t2 − t3)) / 2, right to within
 * half the round trip, however unlike the two ways are. Probes of an older epoch, begun before the clock
 * started over, or impossible (negative round trip) change nothing.
 */
export function addSample(clock: ScreenClock, probe: ProbeSample): ScreenClock {
  const awake = noticeStep(clock, { localMs: probe.t3, dateMs: probe.dateNow })
  const current = probe.epoch > awake.epoch ? heardEpoch(awake, probe.epoch) : awake
  const sample = sampleOf(probe)
  const isOld = probe.epoch < current.epoch || probe.t0 < current.sinceMs
  if (isOld || !(sample.rttMs >= 0)) return current
  const agreeing = contradicts(current, sample, probe.t3) ? discarded(current, probe.t3) : current
  return settled(withWall(joined(agreeing, sample, probe.t3), probe), probe.t3)
}

function sampleOf({ t0, t1, t2, t3 }: ProbeSample): Sample {
  return { atMs: (t0 + t3) / 2, offsetMs: (t1 - t0 + (t2 - t3)) / 2, rttMs: t3 - t0 - (t2 - t1) }
}

/** Further off than both bounds together allow, and by a step: one of the clocks was moved. */
function contradicts(clock: ScreenClock, sample: Sample, localMs: number): boolean {
  if (clock.samples.length === 0) return false
  const { boundMs } = reckon(clock, localMs)
  const apartMs = Math.abs(sample.offsetMs - shownOffsetAt(clock, localMs))
  return apartMs > boundMs + sample.rttMs / 2 + STEP_MS
}

function joined(clock: ScreenClock, sample: Sample, localMs: number): ScreenClock {
  const best = bestOfEachMinute([...clock.samples, sample], localMs - WINDOW_MS)
  const line = lineThrough(best)
  const restMs = shownOffsetAt(clock, localMs) - offsetAt(line, localMs)
  return {
    ...clock,
    samples: best,
    last: sample,
    line,
    slew: { fromMs: localMs, restMs: Math.abs(restMs) < JUMP_MS ? restMs : 0 },
  }
}

/** The newest sample's minute is always there, so the list is never empty. */
function bestOfEachMinute(samples: readonly Sample[], fromMs: number): [Sample, ...Sample[]] {
  const best = new Map<number, Sample>()
  for (const sample of samples) {
    if (sample.atMs < fromMs) continue
    const minute = Math.floor(sample.atMs / MINUTE_MS)
    const other = best.get(minute)
    if (!other || sample.rttMs <= other.rttMs) best.set(minute, sample)
  }
  return [...best.values()] as [Sample, ...Sample[]]
}

function withWall(clock: ScreenClock, probe: ProbeSample): ScreenClock {
  const { serverMs, boundMs, epoch } = reckon(clock, probe.t3)
  const offsetToDateMs = serverMs - probe.dateNow
  return { ...clock, wall: { offsetToDateMs, atDateMs: probe.dateNow, boundMs, epoch } }
}

/** Sure again once the bound is small, or once the whole burst is in and this is as good as the network gets. */
function settled(clock: ScreenClock, localMs: number): ScreenClock {
  const burst = Math.max(0, clock.burst - 1)
  const isSettling = clock.settling && burst > 0 && reckon(clock, localMs).boundMs >= SET_WITHIN_MS
  return { ...clock, burst, settling: isSettling }
}
