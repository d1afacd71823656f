import { describe, expect, it } from 'vitest'
import { device } from './network.fixture.ts'
import { reckon } from './reckon.ts'
import { addSample } from './samples.ts'
import { newScreenClock, probesWanted } from './screen-clock.ts'

const { at, probe, serverAt } = device()
const fresh = newScreenClock(at(0))

describe('one probe', () => {
  it('S21: gives the offset half-way, and half its round trip as bound', () => {
    // t0 1000, t3 1030; server 12.0 s ahead, 10 ms up and 20 ms down:
    // t1 = t2 = 13010; offset ((13010 − 1000) + (13010 − 1030)) / 2 = 11995; bound 30 / 2 = 15
    const clock = addSample(newScreenClock({ localMs: 0, dateMs: 0 }), {
      t0: 1_000,
      t1: 13_010,
      t2: 13_010,
      t3: 1_030,
      epoch: 0,
      dateNow: 1_030,
    })
    const { serverMs, boundMs } = reckon(clock, 1_015)
    expect(serverMs).toBe(1_015 + 11_995)
    expect(boundMs).toBe(15)
  })

  it('S21: the time the server took for its answer is not part of the round trip', () => {
    const answered = { ...probe(0, { upMs: 5, downMs: 5 }), t3: 110, dateNow: at(110).dateMs }
    const clock = addSample(fresh, { ...answered, t2: answered.t1 + 100 })
    expect(reckon(clock, 55).boundMs).toBeCloseTo(5, 9)
  })

  it('S21: its bound grows by 100 ppm of its age', () => {
    const clock = addSample(fresh, probe(0, { upMs: 10, downMs: 10 }))
    // 20 / 2 + 100e-6 × 100,000 = 10 + 10
    expect(reckon(clock, 100_010).boundMs).toBeCloseTo(20, 6)
  })

  it('S21: an unlike way there and back stays within the bound', () => {
    const clock = addSample(fresh, probe(0, { upMs: 0, downMs: 40 }))
    const { serverMs, boundMs } = reckon(clock, 40)
    expect(Math.abs(serverMs - serverAt(40))).toBeLessThanOrEqual(boundMs)
    expect(Math.abs(serverMs - serverAt(40))).toBeCloseTo(20, 6)
  })
})

describe('what it says of itself', () => {
  const after = (rttMs: number) => {
    let clock = fresh
    for (let n = 0; n < 8; n += 1) {
      clock = addSample(clock, probe(n * 2_000, { upMs: rttMs / 2, downMs: rttMs / 2 }))
    }
    return reckon(clock, clock.last?.atMs ?? 0).standing
  }

  it.each([
    [98, 'set'],
    [102, 'roughly'],
    [996, 'roughly'],
    [1_004, 'notSure'],
  ] as const)('S29: with round trips of %i ms it is %s', (rttMs, standing) => {
    expect(after(rttMs)).toBe(standing)
  })

  it('S29: loses its standing as the last probe grows old', () => {
    const clock = addSample(fresh, probe(0, { upMs: 5, downMs: 5 }))
    // 5 + 100e-6 × age: 50 after 450 s, 500 after 4,950 s
    expect(reckon(clock, 440_000).standing).toBe('set')
    expect(reckon(clock, 460_000).standing).toBe('roughly')
    expect(reckon(clock, 4_940_000).standing).toBe('roughly')
    expect(reckon(clock, 4_960_000).standing).toBe('notSure')
  })

  it('S26: is not sure before any probe, and goes by the wall clock meanwhile', () => {
    const { serverMs, boundMs, standing } = reckon(fresh, 5_000)
    expect(serverMs).toBe(at(5_000).dateMs)
    expect(boundMs).toBe(86_400_000)
    expect(standing).toBe('notSure')
  })

  it('S26: is sure with the first probe that bounds it under 50 ms', () => {
    const slow = addSample(fresh, probe(0, { upMs: 60, downMs: 60 }))
    expect(reckon(slow, 120).standing).toBe('notSure')
    const quick = addSample(slow, probe(200, { upMs: 10, downMs: 10 }))
    expect(reckon(quick, 220).standing).toBe('set')
  })

  it('S26: on a slow network the whole burst is in before the bound speaks for itself', () => {
    let clock = fresh
    const standings = []
    for (let n = 0; n < 8; n += 1) {
      clock = addSample(clock, probe(n * 200, { upMs: 90, downMs: 90 }))
      standings.push([probesWanted(clock), reckon(clock, n * 200 + 180).standing])
    }
    expect(standings.slice(-2)).toEqual([
      [1, 'notSure'],
      [0, 'roughly'],
    ])
  })
})
