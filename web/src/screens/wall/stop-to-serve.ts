/** Which planned stop a car that comes in now is meant to serve. */
import { clockAt, currentRun, planInForce, type PlanStop, type State } from '@pitlamp/race'

/** Further off than this it is another matter. Common practice, no source. */
const NEAR_MS = 900_000

/** The nearest stop of the running segment that no visit serves yet, within a quarter of an hour. */
export function plannedStopNear(state: State, now: number): PlanStop | undefined {
  const run = currentRun(state)
  if (!run) return undefined
  const { clockMs } = clockAt(run, now)
  const served = new Set(state.car.stops.map(({ planned }) => planned))
  const off = ({ atMs }: PlanStop) => Math.abs(atMs - clockMs)
  return (planInForce(state, now)?.stops ?? [])
    .filter((stop) => stop.segment === run.segment && !served.has(stop.id) && off(stop) <= NEAR_MS)
    .sort((a, b) => off(a) - off(b))[0]
}
