import { describe, expect, it } from 'vitest'
import { lineThrough, offsetAt } from './line.ts'
import { device } from './network.fixture.ts'
import { reckon } from './reckon.ts'
import { addSample } from './samples.ts'
import { newScreenClock, probesWanted, type ScreenClock } from './screen-clock.ts'

const { at, probe, serverAt } = device()
const quick = { upMs: 2, downMs: 2 }

function probed(clock: ScreenClock, ...times: number[]): ScreenClock {
  return times.reduce((before, t0) => addSample(before, probe(t0, quick)), clock)
}

describe('the line', () => {
  it('S22: goes through a single sample, level', () => {
    const line = lineThrough([{ atMs: 5, offsetMs: 70, rttMs: 3 }])
    expect(offsetAt(line, 1_005)).toBe(70)
  })

  it('S22: lets a sample count by 1 / (1 + rtt²)', () => {
    // At one moment: weights 1 and 1/(1+1) = 0.5, mean (0 × 1 + 30 × 0.5) / 1.5 = 10
    const line = lineThrough([
      { atMs: 0, offsetMs: 0, rttMs: 0 },
      { atMs: 0, offsetMs: 30, rttMs: 1 },
    ])
    expect(offsetAt(line, 0)).toBeCloseTo(10, 9)
  })

  it('S22: follows a steady drift over ten minutes', () => {
    // 50 ppm of a minute are 3 ms.
    const at = (minute: number) => ({ atMs: minute * 60_000, offsetMs: minute * 3, rttMs: 2 })
    const line = lineThrough([at(0), ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map(at)])
    // Ten minutes make 30 ms; a level line through the middle would be 16.5 ms off.
    expect(Math.abs(offsetAt(line, 600_000) - 30)).toBeLessThan(0.2)
  })

  it('S22: takes no slope from two probes a second apart', () => {
    const line = lineThrough([
      { atMs: 0, offsetMs: 0, rttMs: 4 },
      { atMs: 1_000, offsetMs: 3, rttMs: 4 },
    ])
    // Through both it would be 183 ms off a minute later.
    expect(Math.abs(offsetAt(line, 61_000) - 1.5)).toBeLessThan(0.1)
  })
})

describe('samples', () => {
  it('S22: the best of each minute stays, for ten minutes', () => {
    let clock = newScreenClock(at(0))
    for (let second = 0; second < 15 * 60; second += 2) {
      const upMs = second % 60 === 30 ? 1 : 20
      clock = addSample(clock, probe(second * 1_000, { upMs, downMs: 1 }))
    }
    // The last probe is of 14:58: 4:58 to 14:58 are the best of minutes 5 to 14.
    expect(clock.samples.map(({ atMs, rttMs }) => [Math.floor(atMs / 60_000), rttMs])).toEqual(
      [5, 6, 7, 8, 9, 10, 11, 12, 13, 14].map((minute) => [minute, 2]),
    )
  })

  it('S27: a probe begun before the clock started over is ignored', () => {
    const clock = newScreenClock(at(1_000))
    const early = addSample(clock, probe(999, quick))
    expect(early.samples).toEqual([])
    expect(addSample(clock, probe(1_001, quick)).samples).toHaveLength(1)
  })

  it('S27: an impossible probe is ignored: less than no time under way, or no numbers', () => {
    const clock = newScreenClock(at(0))
    const good = probe(10, quick)
    expect(addSample(clock, { ...good, t2: good.t1 + 5 }).samples).toEqual([])
    expect(addSample(clock, { ...good, t1: Number.NaN }).samples).toEqual([])
  })

  it('S24: probes of an older epoch are ignored', () => {
    const clock = addSample(newScreenClock(at(0)), probe(10, quick, 2))
    expect(addSample(clock, probe(20, quick, 1)).last).toEqual(clock.last)
  })

  it('S24: a probe of a newer epoch stands alone, and its time holds at once', () => {
    const before = probed(newScreenClock(at(0)), 10, 2_000, 70_000)
    const set = probe(80_000, quick, 1)
    const moved = { ...set, t1: set.t1 + 3_600_000, t2: set.t2 + 3_600_000 }
    const clock = addSample(before, moved)
    expect(clock.samples).toHaveLength(1)
    expect(clock.epoch).toBe(1)
    expect(probesWanted(clock)).toBe(7)
    expect(reckon(clock, 80_004).serverMs).toBeCloseTo(serverAt(80_004) + 3_600_000, 3)
  })

  it('S31: a probe that contradicts all others by a step discards them', () => {
    const before = probed(newScreenClock(at(0)), 10, 60_010, 120_010)
    const odd = probe(125_000, quick)
    const clock = addSample(before, { ...odd, t1: odd.t1 - 5_000, t2: odd.t2 - 5_000 })
    expect(clock.samples).toHaveLength(1)
    expect(reckon(clock, 125_004).serverMs).toBeCloseTo(serverAt(125_004) - 5_000, 3)
  })

  it('S31: a probe that is merely slow contradicts nothing', () => {
    const before = probed(newScreenClock(at(0)), 10, 60_010, 120_010)
    const clock = addSample(before, probe(125_000, { upMs: 1_800, downMs: 2 }))
    expect(clock.samples).toHaveLength(3)
    expect(reckon(clock, 126_802).serverMs).toBeCloseTo(serverAt(126_802), 1)
  })
})
