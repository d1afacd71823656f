import fc from 'fast-check'
import { expect, test } from 'vitest'
import { changesFor } from '../changes/changes-for.ts'
import { readEntry } from '../entry/read.ts'
import { fold } from '../fold/fold.ts'
import { alertsBetween } from '../obligations/alerts.ts'
import { obligations } from '../obligations/obligations.ts'
import { someLog } from '../testing/arbitrary-log.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN } from '../testing/pressing.ts'
import { comparableAt } from '../standing/comparable.ts'
import { penalties } from '../standing/penalties.ts'
import { resultOf } from '../standing/result.ts'
import { standing } from '../standing/standing.ts'
import { doubleBooked } from '../timeline/double-booked.ts'
import { planTimeline, raceTimeline } from '../timeline/timeline.ts'
import { atOf, clockAt } from '../time/clock-map.ts'
import { lanesOf } from '../time/lanes.ts'
import { currentRun, segmentsOf } from '../time/programme.ts'
import { afterTheFlag } from './after-the-flag.ts'
import { allowances } from './allowances.ts'
import { between } from './between.ts'
import { callsNow } from './calls-now.ts'
import { compulsoryRepairs } from './compulsory-repairs.ts'
import { energyNow } from './energy.ts'
import { nextDutyOf } from './duties.ts'
import { faultClocks } from './fault-clocks.ts'
import { handsOnCar } from './hands-on-car.ts'
import { laneChange } from './lane-change.ts'
import { lightTest } from './lights.ts'
import { nextHandover } from './next-handover.ts'
import { phaseOf } from './phase.ts'
import { runningTimes } from './running-time.ts'
import { segmentClock } from './segment-clock.ts'
import { stintClock } from './stint-clock.ts'
import { stayOut } from './stay-out.ts'
import { stopClock } from './stop-clock.ts'
import { stopVerdict } from './stop-verdict.ts'
import { stopsDone } from './stops-done.ts'

const someState = someLog().map((log) => fold(log.map(readEntry)))
const someNow = fc.integer({ min: -60_000, max: 3_000_000 }).map((ms) => GREEN + ms)

test('L5: nothing that is asked of any state throws', () => {
  fc.assert(
    fc.property(someState, someNow, (state, now) => {
      const asked = [
        [phaseOf(state, now), handsOnCar(state, now), segmentsOf(state, now)],
        [segmentClock(state, now), stintClock(state, now), stopClock(state, now)],
        [stopsDone(state, now), faultClocks(state, now), nextHandover(state, now)],
        Object.values(PEOPLE).map((person) => nextDutyOf(state, person, now)),
        [planTimeline(state, now), raceTimeline(state, now)],
        [compulsoryRepairs(state, now), allowances(state, now), energyNow(state, now)],
        [penalties(state, now), standing(state, now), callsNow(state, now)],
        [afterTheFlag(state, now), between(state, now), stayOut(state, now)],
        state.car.stops.map((stop) => stopVerdict(state, stop.entry)),
        [laneChange(state, now), lightTest(state, now), [...lanesOf(state, now)]],
        [runningTimes(state, now), resultOf(state, now), comparableAt(state, now)],
        doubleBooked(planTimeline(state, now), raceTimeline(state, now)),
        Object.values(PEOPLE).map((person) =>
          changesFor({ state: fold([]), now }, { state, now }, person),
        ),
        alertsBetween(obligations(state, now), now - 600_000, now),
      ]
      // Whole numbers all through: what is not finite becomes null on its way.
      expect(JSON.stringify(asked)).not.toMatch(/:null|\d\.\d/)
    }),
    { numRuns: 300 },
  )
})

test('at most one run is open, the last one, and a person has one open duty', () => {
  fc.assert(
    fc.property(someState, (state) => {
      const { runs } = state.raceControl
      expect(runs.slice(0, -1).every((run) => run.endAt !== undefined)).toBe(true)
      expect(currentRun(state)).toBe(runs.at(-1)?.endAt === undefined ? runs.at(-1) : undefined)
      const open = state.people.duties.filter((span) => span.toAt === undefined)
      expect(new Set(open.map((span) => span.person)).size).toBe(open.length)
      expect(open.filter((span) => span.duty === 'controller').length).toBeLessThan(2)
    }),
  )
})

test('knots of a run rise in time and are unsure by a press at least', () => {
  fc.assert(
    fc.property(someState, (state) => {
      for (const { knots } of state.raceControl.runs) {
        const times = knots.map((knot) => knot.at)
        expect(times).toEqual([...new Set(times)].sort((a, b) => a - b))
        expect(knots.every((knot) => knot.boundMs >= 1_000 && knot.clockMs >= 0)).toBe(true)
      }
    }),
  )
})

test('a position that is to come is reached when it is said to be', () => {
  fc.assert(
    fc.property(someState, someNow, fc.integer({ min: 0, max: 1_000_000 }), (state, now, ahead) => {
      const run = currentRun(state)
      if (!run) return
      const from = Math.max(now, run.knots.at(-1)?.at ?? now)
      const { clockMs } = clockAt(run, from)
      expect(atOf(run, clockMs + ahead, now)).toBe(from + ahead)
    }),
  )
})
