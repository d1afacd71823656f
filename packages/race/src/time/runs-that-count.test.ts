import { expect, test } from 'vitest'
import { servedStops } from '../clocks/served-stops.ts'
import { judge } from '../checks/judge.ts'
import type { Rule } from '../rules/index.ts'
import { changedTo } from '../testing/changed.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, smallMeeting } from '../testing/small-meeting.ts'
import { raceTimeline } from '../timeline/timeline.ts'
import { countsOf } from './runs-that-count.ts'
import { segmentsOf } from './programme.ts'

const most: Rule = { id: 'most', kind: 'drivingTime', value: { atMostMs: 30 * MINUTE } }
const stops = [{ id: 'p1', segment: 'one', atMs: 5 * MINUTE, mandatory: true }]

/** Twelve minutes with a stop at five; then it is to be run again, from minute 20 on. */
function runTwice(lapsCount: boolean, drivingCounts: boolean): Pressing {
  const pressing = smallMeeting({ rules: [most], plan: { ...plan, stops } })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'stopped', planned: 'p1' })
  pressing.press(GREEN + 6 * MINUTE, 'stopOut.1', { moment: 'leaving' })
  changedTo(pressing, GREEN + 12 * MINUTE, { what: 'runAgain', lapsCount, drivingCounts })
  pressing.press(GREEN + 20 * MINUTE, 'green.1', { segment: 'one' })
  return pressing
}

test('L48: a run that is to be run again counts as race control ruled', () => {
  const counts = (laps: boolean, driving: boolean) => {
    const state = runTwice(laps, driving).state()
    return state.raceControl.runs.map((run) => countsOf(state, run))
  }
  expect(counts(false, true)).toEqual([
    { laps: false, driving: true },
    { laps: true, driving: true },
  ])
  expect(counts(true, false)[0]).toEqual({ laps: true, driving: false })
})

test('L48: without its driving nobody drove in it', () => {
  const driven = (drivingCounts: boolean) => {
    const pressing = runTwice(false, drivingCounts)
    const now = GREEN + 28 * MINUTE
    pressing.press(now, 'segmentEnd.1', { segment: 'one' })
    const state = pressing.state()
    const found = judge(state, raceTimeline(state, now), now)
    return found
      .filter(({ id, people }) => id === 'most:atMost' && people[0] === PEOPLE.Solveig)
      .map(({ value }) => value / MINUTE)
  }
  // Solveig was left at the controller all through: 12 min of the first run, 8 of the second.
  expect(driven(true)).toEqual([20])
  expect(driven(false)).toEqual([8])
})

test('L48: without its laps it leaves no stops: the plan’s are still to be made', () => {
  const served = (lapsCount: boolean) =>
    servedStops(runTwice(lapsCount, true).state(), GREEN + 21 * MINUTE)
  expect([...served(false)]).toEqual([])
  expect([...served(true)]).toEqual(['p1'])
})

test('a segment to be run again is ahead until its green', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  changedTo(pressing, GREEN + 12 * MINUTE, {
    ...{ what: 'runAgain', lapsCount: false, drivingCounts: false },
  })
  const states = segmentsOf(pressing.state(), GREEN + 13 * MINUTE).map(({ state }) => state)
  expect(states).toEqual(['ahead', 'ahead'])
})

test('a gap in the second run is not filled by who drove in the first', () => {
  const pressing = runTwice(false, false)
  const now = GREEN + 28 * MINUTE
  pressing.press(GREEN + 23 * MINUTE, 'dutyLeft.1', { person: PEOPLE.Solveig })
  pressing.press(GREEN + 25 * MINUTE, 'dutyTaken.1', { person: PEOPLE.Okello, duty: 'controller' })
  const state = pressing.state()
  const gaps = judge(state, raceTimeline(state, now), now).filter(
    ({ id }) => id === 'somebodyDrives:gap',
  )
  // The second run began at 20: nobody from 3 to 5.
  expect(gaps.map(({ sentence }) => sentence)).toEqual([
    'Nobody drives from 0:03 to 0:05 of segment 1.',
  ])
})
