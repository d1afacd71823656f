import { describe, expect, it } from 'vitest'
import { device } from './network.fixture.ts'
import { reckon } from './reckon.ts'
import { addSample } from './samples.ts'
import { newScreenClock, probesWanted, type ScreenClock } from './screen-clock.ts'
import { heardEpoch, noticeStep, startOver } from './steps.ts'
import { reckonedByWall, type WallReckoning } from './wall.ts'

const { at, probe, serverAt } = device()
const quick = { upMs: 2, downMs: 2 }

/** Set for a minute and a half, both clocks last compared at 90 s. */
function setClock(): ScreenClock {
  let clock = newScreenClock(at(0))
  for (let second = 0; second < 90; second += 2) {
    clock = addSample(clock, probe(second * 1_000, quick))
  }
  return noticeStep(clock, at(90_000))
}
function wallOf({ wall }: ScreenClock): WallReckoning {
  if (!wall) throw new Error('The clock was never set.')
  return wall
}

/** An hour's sleep in which local time stood still. */
const woken = { localMs: 91_000, dateMs: at(91_000).dateMs + 3_600_000 }

describe('the device’s two clocks', () => {
  it('S25: stepping together leave everything as it is', () => {
    const clock = noticeStep(setClock(), at(91_000))
    expect(clock.samples).toHaveLength(2)
    expect(reckon(clock, 91_000).standing).toBe('set')
  })

  it('S25: a difference of 250 ms is let pass, one more is not', () => {
    const late = (ms: number) => ({ localMs: 91_000, dateMs: at(91_000).dateMs + ms })
    expect(noticeStep(setClock(), late(250)).samples).toHaveLength(2)
    expect(noticeStep(setClock(), late(251)).samples).toHaveLength(0)
    expect(noticeStep(setClock(), late(-251)).samples).toHaveLength(0)
  })

  it('S25: after a sleep it asks for eight probes, is not sure, and counts on by the wall clock', () => {
    const clock = noticeStep(setClock(), woken)
    expect(probesWanted(clock)).toBe(8)
    const { serverMs, standing, boundMs } = reckon(clock, 91_000)
    expect(standing).toBe('notSure')
    expect(serverMs).toBeCloseTo(serverAt(91_000) + 3_600_000, 1)
    expect(boundMs).toBeGreaterThan(3_600_000)
  })

  it('S25: a wall clock set back does not take the shown time with it', () => {
    const clock = noticeStep(setClock(), { localMs: 91_000, dateMs: at(91_000).dateMs - 3_600_000 })
    expect(reckon(clock, 91_000).serverMs).toBeCloseTo(serverAt(91_000), 1)
    expect(reckon(clock, 91_000).standing).toBe('notSure')
  })

  it('S25: a sleep is noticed by the first probe after it, if nothing noticed it before', () => {
    const sample = { ...probe(91_000, quick), dateNow: woken.dateMs + 4 }
    const moved = { ...sample, t1: sample.t1 + 3_600_000, t2: sample.t2 + 3_600_000 }
    const clock = addSample(setClock(), moved)
    // It was begun before the sleep was noticed, so it cannot be trusted either.
    expect(clock.samples).toHaveLength(0)
    expect(probesWanted(clock)).toBe(8)
  })

  it('S27: a probe under way through a sleep does not set the clock', () => {
    const asleep = probe(90_500, { upMs: 2, downMs: 498 })
    const clock = addSample(noticeStep(setClock(), woken), asleep)
    expect(clock.samples).toHaveLength(0)
    expect(reckon(clock, 91_000).standing).toBe('notSure')
  })

  it('S26: the burst sets it again', () => {
    const clock = noticeStep(setClock(), woken)
    const sample = probe(91_010, quick)
    const set = addSample(clock, { ...sample, dateNow: woken.dateMs + 14 })
    expect(reckon(set, 91_014).standing).toBe('set')
    expect(probesWanted(set)).toBe(7)
  })
})

describe('starting over', () => {
  it('S26: without a step wants a burst, and is as sure as it was', () => {
    const before = reckon(setClock(), 91_000)
    const clock = startOver(setClock(), at(91_000))
    expect(reckon(clock, 91_000)).toEqual(before)
    expect(clock.samples).toEqual([])
    expect(probesWanted(clock)).toBe(8)
  })

  it('S26: without a step, while it was not sure, stays so', () => {
    const clock = startOver(noticeStep(setClock(), woken), { ...woken, localMs: 91_000 })
    expect(reckon(clock, 91_000).standing).toBe('notSure')
  })

  it('S24: so it does when the server’s clock is said to be set anew, but vouches for nothing', () => {
    const clock = heardEpoch(setClock(), 1)
    expect(reckon(clock, 90_000).serverMs).toBeCloseTo(serverAt(90_000), 1)
    expect(reckon(clock, 90_000).boundMs).toBe(86_400_000)
    expect(clock.wall).toBeUndefined()
    expect(heardEpoch(clock, 1)).toBe(clock)
    expect(heardEpoch(clock, 0)).toBe(clock)
  })
})

describe('by the wall clock', () => {
  it('S30: the server’s time is reckoned after a reload, and its bound has grown', () => {
    const wall = wallOf(setClock())
    // 100 ppm of 600 s are 60 ms, on top of what was known at the last probe.
    const reckoned = reckonedByWall(wall, wall.atDateMs + 600_000)
    expect(reckoned).toEqual({
      serverMs: wall.atDateMs - 3_000 + 600_000,
      boundMs: Math.ceil(wall.boundMs + 60),
      epoch: 0,
    })
  })

  it('S30: a screen that was reloaded starts from it, not sure yet', () => {
    const { wall } = setClock()
    const reloaded = newScreenClock({ localMs: 0, dateMs: at(150_000).dateMs }, wall)
    const { serverMs, standing, boundMs } = reckon(reloaded, 10)
    expect(Math.abs(serverMs - serverAt(150_010))).toBeLessThan(1)
    expect(boundMs).toBeLessThan(15)
    expect(standing).toBe('notSure')
  })

  it('S30: a wall clock that was set back says nothing', () => {
    const wall = wallOf(setClock())
    expect(reckonedByWall(wall, wall.atDateMs - 1)).toBeUndefined()
    expect(newScreenClock({ localMs: 0, dateMs: wall.atDateMs - 1 }, wall).wall).toBeUndefined()
  })

  it('S30: a step of it widens the bound by itself', () => {
    const before = wallOf(setClock())
    const after = wallOf(noticeStep(setClock(), woken))
    expect(after.boundMs).toBe(before.boundMs + 3_600_000)
  })
})
