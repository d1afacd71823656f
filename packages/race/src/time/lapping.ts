/** When the car laps: a segment runs that it has a lane in, the power is on, the car is not in. */
import { cutOut, lengthOf, type Stretch } from '../checks/stretches.ts'
import type { State } from '../fold/state.ts'
import { satOut } from './lanes.ts'

const LATEST = Number.MAX_SAFE_INTEGER

/** Stretches of meeting time from `fromAt` to `toAt`, in order. */
export function lapping(state: State, { fromAt, toAt }: Stretch): readonly Stretch[] {
  const { runs, interruptions } = state.raceControl
  const holes = [
    ...interruptions.map((one) => ({ fromAt: one.fromAt, toAt: one.toAt ?? toAt })),
    ...visits(state, toAt),
  ]
  const isSatOut = satOut(state, toAt)
  return runs.flatMap((run) => {
    if (isSatOut(run)) return []
    const { greenAt, endAt } = run
    return cutOut({ fromAt: Math.max(greenAt, fromAt), toAt: Math.min(endAt ?? toAt, toAt) }, holes)
  })
}

export function lappingMs(state: State, stretch: Stretch): number {
  return lengthOf(lapping(state, stretch))
}

/** Whether the car laps at the end of the log, as far as was pressed. */
export function lapsNow(state: State): boolean {
  const { runs, interruptions } = state.raceControl
  const run = runs.at(-1)
  const stop = state.car.stops.at(-1)
  const isIn = stop !== undefined && !stop.moments.leaving && !stop.moments.pitExit
  const isOff = interruptions.some((one) => one.toAt === undefined)
  if (run === undefined || run.endAt !== undefined || isOff || isIn) return false
  return !satOut(state, LATEST)(run)
}

/** From the first moment to the last; a car that did not go out is in. */
function visits(state: State, toAt: number): readonly Stretch[] {
  return state.car.stops.map(({ moments }) => {
    const times = Object.values(moments).map(({ at }) => at)
    const isOut = moments.leaving ?? moments.pitExit
    return { fromAt: Math.min(...times), toAt: isOut ? Math.max(...times) : toAt }
  })
}
