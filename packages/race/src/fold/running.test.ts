import { describe, expect, test } from 'vitest'
import { clockAt } from '../time/clock-map.ts'
import { segmentsOf } from '../time/programme.ts'
import { GREEN, problemKinds, type Pressing } from '../testing/pressing.ts'
import { MINUTE, policy, SECOND, smallMeeting } from '../testing/small-meeting.ts'

function running(rules: Parameters<typeof smallMeeting>[0] = {}): Pressing {
  const pressing = smallMeeting(rules)
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}
const knotsOf = (pressing: Pressing) => pressing.state().raceControl.runs[0]?.knots
const sentences = (pressing: Pressing) => pressing.state().problems.map(({ sentence }) => sentence)

describe('green', () => {
  test('L19: starts a run of its segment with the race clock at 0', () => {
    const pressing = smallMeeting()
    const green = pressing.by({ atBoundMs: 40 }).press(GREEN, 'green.1', { segment: 'one' })
    expect(pressing.state().raceControl.runs).toEqual([
      {
        entry: green,
        segment: 'one',
        length: { by: 'time', lengthMs: 1_200_000 },
        greenAt: GREEN,
        // Sure to a press's 1,000 ms and the 40 ms the device owned up to.
        knots: [{ at: GREEN, clockMs: 0, rate: 1, boundMs: 1_040 }],
      },
    ])
  })

  test('L19: goes on after a red flag of the same run', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'redFlag.1', {})
    pressing.press(GREEN + 3 * MINUTE, 'green.1', { segment: 'one' })
    const { runs, interruptions } = pressing.state().raceControl
    expect(runs).toHaveLength(1)
    expect(interruptions).toMatchObject([{ cause: 'redFlag', toAt: GREEN + 3 * MINUTE }])
    expect(clockAt(runs[0] as NonNullable<(typeof runs)[0]>, GREEN + 4 * MINUTE)).toMatchObject({
      // One minute before the flag, one after it.
      clockMs: 120_000,
      rate: 1,
    })
  })
})

describe('green out of the common', () => {
  test('L19: starts a second run where the segment was declared to be run again', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'redFlag.1', {})
    const change = { what: 'runAgain', lapsCount: false, drivingCounts: true } as const
    pressing.press(GREEN + 2 * MINUTE, 'segmentChanged.1', { segment: 'one', change })
    const now = GREEN + 3 * MINUTE
    expect(segmentsOf(pressing.state(), now)[0]?.state).toBe('ahead')
    pressing.press(now, 'green.1', { segment: 'one' })
    const state = pressing.state()
    expect(state.raceControl.runs.map(({ greenAt, endAt }) => [greenAt, endAt])).toEqual([
      [GREEN, GREEN + 2 * MINUTE],
      [now, undefined],
    ])
    expect(state.problems).toEqual([])
  })

  test('L19: of a segment that was over is listed, and runs it again all the same', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'segmentEnd.1', { segment: 'one' })
    pressing.press(GREEN + 2 * MINUTE, 'green.1', { segment: 'one' })
    expect(pressing.state().raceControl.runs).toHaveLength(2)
    expect(sentences(pressing)).toEqual(['Segment 1 was over and was not to be run again.'])
  })

  test('L19: of another segment ends the one that was never ended', () => {
    const pressing = running()
    pressing.press(GREEN + 20 * MINUTE, 'green.1', { segment: 'two' })
    const { runs } = pressing.state().raceControl
    expect(runs.map(({ segment, endAt }) => [segment, endAt])).toEqual([
      ['one', GREEN + 20 * MINUTE],
      ['two', undefined],
    ])
    expect(sentences(pressing)).toEqual(['Segment 2 began while Segment 1 was still running.'])
  })

  test('L5: of a segment the programme lacks runs without a length', () => {
    const pressing = smallMeeting()
    pressing.press(GREEN, 'green.1', { segment: 'nowhere' })
    expect(pressing.state().raceControl.runs[0]?.length).toEqual({ by: 'laps', laps: 0 })
    expect(problemKinds(pressing.state())).toEqual(['outOfPlace'])
  })
})

describe('power', () => {
  test('L20: is off from a track call to power on', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 90 * SECOND, 'powerOn.1', {})
    const { interruptions } = pressing.state().raceControl
    expect(interruptions).toMatchObject([
      { cause: 'trackCall', fromAt: GREEN + MINUTE, toAt: GREEN + 90 * SECOND },
    ])
  })

  test('L20: a red flag takes the place of a track call', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 2 * MINUTE, 'redFlag.1', {})
    const state = pressing.state()
    expect(state.raceControl.interruptions).toMatchObject([
      { cause: 'trackCall', toAt: GREEN + 2 * MINUTE },
      { cause: 'redFlag', fromAt: GREEN + 2 * MINUTE },
    ])
    // Assumed to hold under both: the clock stands all the while, one stop and no start.
    expect(state.raceControl.runs[0]?.knots).toHaveLength(2)
    expect(state.problems).toEqual([])
  })

  test('L20: the segment’s end closes the run and the interruption it stood in', () => {
    const pressing = running()
    pressing.press(GREEN + MINUTE, 'trackCall.1', {})
    const end = pressing.press(GREEN + 2 * MINUTE, 'segmentEnd.1', { segment: 'one' })
    const { runs, interruptions } = pressing.state().raceControl
    expect(runs).toMatchObject([{ endAt: GREEN + 2 * MINUTE, endEntry: end }])
    expect(interruptions).toMatchObject([{ toAt: GREEN + 2 * MINUTE }])
  })

  test('L20: pressed out of place is listed in plain words and changes nothing', () => {
    const pressing = smallMeeting()
    pressing.press(GREEN - SECOND, 'trackCall.1', {})
    pressing.press(GREEN, 'green.1', { segment: 'one' })
    pressing.press(GREEN + MINUTE, 'powerOn.1', {})
    pressing.press(GREEN + 2 * MINUTE, 'segmentEnd.1', { segment: 'two' })
    expect(sentences(pressing)).toEqual([
      'The power went off while no segment was running.',
      'The power was already on.',
      'Segment 2 ended without having begun.',
    ])
    expect(knotsOf(pressing)).toHaveLength(1)
  })
})

describe('the clock map', () => {
  test('L21: an interruption keeps what every clock does, assumed where the rules are silent', () => {
    const pressing = running({ rules: [policy('segment', 'runs'), policy('driving', 'holds')] })
    pressing.press(GREEN + MINUTE, 'trackCall.1', {})
    expect(pressing.state().raceControl.interruptions[0]?.policy).toEqual({
      segment: 'runs',
      stopMinimum: 'holds',
      driving: 'holds',
      repairLimit: 'runs',
    })
  })

  test('L21: a track call under which the segment clock runs adds no knot', () => {
    const pressing = running({ rules: [policy('segment', 'runs')] })
    pressing.press(GREEN + MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 2 * MINUTE, 'powerOn.1', {})
    expect(knotsOf(pressing)).toEqual([{ at: GREEN, clockMs: 0, rate: 1, boundMs: 1_000 }])
  })

  test('L22: each pressed stop and start makes it less sure, a reading sets it', () => {
    const pressing = running({ rules: [policy('segment', 'holds')] })
    pressing.by({ atBoundMs: 10 }).press(GREEN + 60 * SECOND, 'trackCall.1', {})
    pressing.by({ atBoundMs: 20 }).press(GREEN + 90 * SECOND, 'powerOn.1', {})
    const reading = { segment: 'one', shows: 'toGo', readingMs: 1_078_000 } as const
    pressing.by({ atBoundMs: 30 }).press(GREEN + 150 * SECOND, 'clockRead.1', reading)
    expect(knotsOf(pressing)).toEqual([
      { at: GREEN, clockMs: 0, rate: 1, boundMs: 1_000 },
      { at: GREEN + 60 * SECOND, clockMs: 60_000, rate: 0, boundMs: 2_010 },
      { at: GREEN + 90 * SECOND, clockMs: 60_000, rate: 1, boundMs: 3_030 },
      // 20:00 less 17:58 to go: 2:02 gone, where ours had 2:00.
      { at: GREEN + 150 * SECOND, clockMs: 122_000, rate: 1, boundMs: 1_030 },
    ])
    expect(pressing.state().raceControl.runs[0]?.clockReadAt).toBe(GREEN + 150 * SECOND)
  })

  test('L22: a reading while the clock stands sets it standing', () => {
    const pressing = running({ rules: [policy('segment', 'holds')] })
    pressing.press(GREEN + 60 * SECOND, 'trackCall.1', {})
    const reading = { segment: 'one', shows: 'gone', readingMs: 59_000 } as const
    pressing.press(GREEN + 70 * SECOND, 'clockRead.1', reading)
    expect(knotsOf(pressing)?.at(-1)).toMatchObject({ clockMs: 59_000, rate: 0, boundMs: 1_000 })
  })

  test('L22: a reading that cannot be is listed and changes nothing', () => {
    const pressing = running()
    const read = (segment: string, readingMs: number) =>
      pressing.press(GREEN + MINUTE, 'clockRead.1', { segment, shows: 'toGo', readingMs })
    read('one', 1_200_001)
    read('two', 1_000)
    expect(problemKinds(pressing.state())).toEqual(['outOfPlace', 'outOfPlace'])
    expect(knotsOf(pressing)).toHaveLength(1)
  })
})

describe('a changed segment', () => {
  test('L23: has its new length, running or ahead', () => {
    const pressing = running()
    const change = (lengthMs: number) => ({ what: 'length', lengthMs }) as const
    pressing.press(GREEN, 'segmentChanged.1', { segment: 'one', change: change(900_000) })
    pressing.press(GREEN, 'segmentChanged.1', { segment: 'two', change: change(300_000) })
    const outlooks = segmentsOf(pressing.state(), GREEN + MINUTE)
    expect(outlooks.map(({ lengthMs }) => lengthMs)).toEqual([900_000, 300_000])
    expect(outlooks[0]?.endsAt).toBe(GREEN + 900_000)
  })

  test('L23: that is abandoned ends where it runs, and is passed over where it is ahead', () => {
    const pressing = running()
    const change = { what: 'abandoned' } as const
    pressing.press(GREEN + MINUTE, 'segmentChanged.1', { segment: 'one', change })
    pressing.press(GREEN + MINUTE, 'segmentChanged.1', { segment: 'two', change })
    const outlooks = segmentsOf(pressing.state(), GREEN + 2 * MINUTE)
    expect(outlooks.map(({ state }) => state)).toEqual(['abandoned', 'abandoned'])
    expect(pressing.state().raceControl.runs).toMatchObject([
      { abandoned: true, endAt: GREEN + MINUTE },
    ])
  })
})
