import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { device } from './network.fixture.ts'
import { reckon } from './reckon.ts'
import { addSample } from './samples.ts'
import { newScreenClock } from './screen-clock.ts'

/** Rounding of times around 1.7e12 ms, which are held to about 0.0002 ms. */
const ROUNDING_MS = 0.01

describe('the bound', () => {
  it('S23: covers the error on any network, with any pauses, for a clock within 50 ppm', () => {
    const way = fc.oneof(
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 2_000, noNaN: true }),
    )
    const turn = fc.record({
      upMs: way,
      downMs: way,
      pauseMs: fc.oneof(
        fc.double({ min: 0, max: 4_000, noNaN: true }),
        fc.double({ min: 0, max: 900_000, noNaN: true }),
      ),
    })
    const ppm = fc.double({ min: -50, max: 50, noNaN: true })
    fc.assert(
      fc.property(ppm, fc.array(turn, { minLength: 1, maxLength: 40 }), (drift, turns) => {
        const { at, probe, serverAt } = device(drift * 1e-6)
        let clock = newScreenClock(at(0))
        let now = 0
        for (const { upMs, downMs, pauseMs } of turns) {
          const sample = probe(now, { upMs, downMs })
          clock = addSample(clock, sample)
          for (const moment of [sample.t3, sample.t3 + pauseMs / 2, sample.t3 + pauseMs]) {
            const { serverMs, boundMs } = reckon(clock, moment)
            expect(Math.abs(serverMs - serverAt(moment))).toBeLessThanOrEqual(boundMs + ROUNDING_MS)
          }
          now = sample.t3 + pauseMs
        }
      }),
    )
  })
})
