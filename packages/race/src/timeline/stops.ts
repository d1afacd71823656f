import { cameInAt, visitsOf } from '../clocks/visits.ts'
import { countedMoments, type CountedMoments } from '../clocks/stop-clock.ts'
import type { State, StopState } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { counted } from '../time/held.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { positionAt } from '../time/plan-spans.ts'
import { isGone, segmentsOf } from '../time/programme.ts'

export interface TimelineStop {
  /** The plan's line; in the race the entry of the first moment. */
  readonly id: string
  readonly segment: string
  readonly atMs: number
  readonly at: number
  readonly mandatory: boolean
  readonly tasks: readonly string[]
  readonly done: boolean
  /** The plan's line it was made for. */
  readonly planned?: string
  /** Between the two moments the rules count, as its clock counts it; only where both were recorded. */
  readonly lastedMs?: number
  /** When the car went out again, as far as that is known. */
  readonly outAt?: number
}

export function plannedStops(state: State, now: number): readonly TimelineStop[] {
  const outlooks = segmentsOf(state, now)
  return (planInForce(state, now)?.stops ?? [])
    .flatMap(({ id, segment, atMs, mandatory, task }): TimelineStop[] => {
      const outlook = outlooks.find((one) => one.item.id === segment)
      if (!outlook || isGone(outlook)) return []
      const at = positionAt(outlook, atMs, now)
      const tasks = task === undefined ? [] : [task]
      return [{ ...{ id, segment, atMs, at, mandatory, tasks }, done: false }]
    })
    .sort((a, b) => a.at - b.at)
}

/** Visits while a segment ran, in order. */
export function madeStops(state: State, now: number): readonly TimelineStop[] {
  const moments = countedMoments(state, now)
  return visitsOf(state, now).flatMap(({ stop, mandatory }): TimelineStop[] => {
    const at = cameInAt(stop)
    const run = state.raceControl.runs
      .filter((one) => one.segment === stop.segment && one.greenAt <= at)
      .at(-1)
    if (!run || at > now) return []
    return [
      {
        ...{ id: stop.entry, segment: run.segment, at, mandatory, done: true },
        atMs: clockAt(run, at).clockMs,
        tasks: stop.work.filter(({ done }) => done).map(({ what }) => what),
        ...(stop.planned === undefined ? {} : { planned: stop.planned }),
        ...lasted(state, stop, moments),
      },
    ]
  })
}

function lasted(
  state: State,
  { moments }: StopState,
  { from, to }: CountedMoments,
): Pick<TimelineStop, 'lastedMs' | 'outAt'> {
  const began = moments[from] ?? moments.stopped ?? moments.pitEntry
  const ended = moments[to] ?? moments.leaving ?? moments.pitExit
  if (!began || !ended) return {}
  const { countedMs } = counted(state, 'stopMinimum', { from: began.at, to: ended.at })
  return { lastedMs: countedMs, outAt: ended.at }
}
