/** The weighted line through the best probes of the last ten minutes. */
import type { Line, Sample } from './screen-clock.ts'

/**
 * A quartz runs within about ±100 ppm: the slope is held to that as by one more observation, so that two
 * probes a second apart do not point anywhere. In the weights' unit, 1 / (100 ppm)².
 */
const SLOPE_WEIGHT = 1e8

/**
 * Weighted least squares of offset over local time, weights 1 / (1 + rtt²) with the round trip in ms; the
 * clock filter of RFC 5905 with a line instead of the single best sample. Anchored at the newest sample.
 * One sample gives a level line through it; the list must not be empty.
 */
export function lineThrough(samples: readonly [Sample, ...Sample[]]): Line {
  const anchor = samples[samples.length - 1] ?? samples[0]
  let weights = 0
  let times = 0
  let offsets = 0
  for (const sample of samples) {
    const weight = weightOf(sample)
    weights += weight
    times += weight * (sample.atMs - anchor.atMs)
    offsets += weight * (sample.offsetMs - anchor.offsetMs)
  }
  const meanTime = times / weights
  const meanOffset = offsets / weights
  let spread = SLOPE_WEIGHT
  let together = 0
  for (const sample of samples) {
    const time = sample.atMs - anchor.atMs - meanTime
    spread += weightOf(sample) * time * time
    together += weightOf(sample) * time * (sample.offsetMs - anchor.offsetMs - meanOffset)
  }
  const slope = together / spread
  return {
    atMs: anchor.atMs,
    offsetMs: anchor.offsetMs + meanOffset - slope * meanTime,
    slope,
  }
}

/** Server minus local time on the line. */
export function offsetAt(line: Line, localMs: number): number {
  return line.offsetMs + line.slope * (localMs - line.atMs)
}

function weightOf({ rttMs }: Sample): number {
  return 1 / (1 + rttMs * rttMs)
}
