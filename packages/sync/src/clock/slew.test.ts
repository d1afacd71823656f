import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { device } from './network.fixture.ts'
import { reckon } from './reckon.ts'
import { addSample } from './samples.ts'
import { newScreenClock, type ScreenClock } from './screen-clock.ts'

const { at, probe } = device()

/** Set by a probe that took 300 ms up and nothing down, so that it is 150 ms ahead of a better one. */
function ahead(): ScreenClock {
  return addSample(newScreenClock(at(0)), probe(0, { upMs: 300, downMs: 0 }))
}
const better = probe(1_000, { upMs: 1, downMs: 1 })

describe('corrections', () => {
  it('S28: under 200 ms are slewed: nothing at first, a tenth of the time gone, all of it in the end', () => {
    const before = reckon(ahead(), 1_002)
    const clock = addSample(ahead(), better)
    expect(reckon(clock, 1_002).serverMs).toBeCloseTo(before.serverMs, 6)
    const gone = (ms: number) => reckon(clock, 1_002 + ms).serverMs - before.serverMs
    // The better probe weighs all but everything; 100 ms later a tenth of it, 10 ms, is taken back.
    expect(gone(100)).toBeCloseTo(90, 1)
    expect(gone(10_000) - 10_000).toBeGreaterThan(-151)
    expect(gone(10_000) - 10_000).toBeLessThan(-149)
  })

  it('S28: while one is slewed the bound says how far off the shown time still is', () => {
    const clock = addSample(ahead(), better)
    expect(reckon(clock, 1_002).boundMs).toBeGreaterThan(149)
    expect(reckon(clock, 3_002).boundMs).toBeLessThan(3)
  })

  it('S28: of 200 ms and more jump', () => {
    const start = addSample(newScreenClock(at(0)), probe(0, { upMs: 500, downMs: 0 }))
    const clock = addSample(start, probe(1_000, { upMs: 1, downMs: 1 }))
    const moved = reckon(clock, 1_002).serverMs - reckon(start, 1_002).serverMs
    expect(moved).toBeLessThan(-249)
    expect(moved).toBeGreaterThan(-251)
  })

  it('S28: shown time never runs backwards by slewing, whatever the probes', () => {
    const delays = fc.record({
      upMs: fc.double({ min: 0, max: 180, noNaN: true }),
      downMs: fc.double({ min: 0, max: 180, noNaN: true }),
      pauseMs: fc.double({ min: 1, max: 3_000, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(delays, { minLength: 2, maxLength: 60 }), (steps) => {
        let clock = addSample(newScreenClock(at(0)), probe(0, { upMs: 1, downMs: 1 }))
        let now = 2
        let shown = reckon(clock, now).serverMs
        const look = (localMs: number) => {
          const next = reckon(clock, localMs).serverMs
          expect(next).toBeGreaterThanOrEqual(shown)
          shown = next
        }
        for (const { upMs, downMs, pauseMs } of steps) {
          look(now + pauseMs / 2)
          const sample = probe(now + pauseMs, { upMs, downMs })
          look(sample.t3)
          clock = addSample(clock, sample)
          look(sample.t3)
          now = sample.t3
        }
      }),
    )
  })
})
