/** Windows, planned stops, and GO. */
import { phaseOf } from '../clocks/phase.ts'
import { driverNow } from '../clocks/stint-clock.ts'
import { stopClock } from '../clocks/stop-clock.ts'
import { stopsDone, type StopWindow } from '../clocks/stops-done.ts'
import { servedStops } from '../clocks/served-stops.ts'
import type { PlanStop } from '../documents/plan.ts'
import type { State } from '../fold/state.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { positionAt } from '../time/plan-spans.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'
import type { Obligation } from './obligation.ts'
import { standsStill } from '../time/standing-still.ts'

export function stopsDue(state: State, now: number): readonly Obligation[] {
  const outlooks = segmentsOf(state, now)
  const driver = driverNow(state)
  const asked = { state, now, outlooks, concerns: driver ? [driver.person] : [] }
  return [...go(asked), ...windows(asked), ...plannedStops(asked)]
}

interface Asked {
  readonly state: State
  readonly now: number
  readonly outlooks: readonly SegmentOutlook[]
  readonly concerns: readonly string[]
}

/** While the minimum holds, GO would come once it goes on. */
function go({ state, now, concerns }: Asked): readonly Obligation[] {
  const stop = stopClock(state, now)
  if (stop?.minimumMs === undefined || stop.remainingMs === undefined) return []
  if (stop.countedFrom === undefined) return []
  return [
    {
      id: `stopGo:${stop.stop.entry}`,
      kind: 'stopGo',
      dueAt: stop.goAt ?? now + stop.remainingMs + stop.goMarginMs,
      held: stop.goAt === undefined,
      lengthMs: stop.minimumMs + stop.goMarginMs,
      concerns,
      label: 'GO',
    },
  ]
}

/** A window is first to open, then to close; a car that came in for it ends both. */
function windows(asked: Asked): readonly Obligation[] {
  return stopsDone(asked.state, asked.now).windows.flatMap((window) => {
    const outlook = asked.outlooks.find((one) => one.item.id === window.segment)
    return outlook ? windowDue(asked, window, outlook) : []
  })
}

function windowDue(
  { state, now, concerns }: Asked,
  window: StopWindow,
  outlook: SegmentOutlook,
): readonly Obligation[] {
  const held = standsStill(state, outlook, now)
  const { id, opensAt, closesAt } = window
  if (window.state === 'ahead' && opensAt !== undefined) {
    const label = 'Mandatory stop: window opens'
    const lengthMs = window.fromMs
    const common = {
      kind: 'stopWindowOpens',
      dueAt: opensAt,
      held,
      ...(lengthMs === 0 ? {} : { lengthMs }),
      concerns,
      label,
    } as const
    return [{ id: `stopWindowOpens:${id}`, ...common }]
  }
  if (window.state !== 'open' || closesAt === undefined) return []
  const label = 'Mandatory stop: window closes'
  const lengthMs = window.toMs - window.fromMs
  const common = {
    kind: 'stopWindowCloses',
    dueAt: closesAt,
    held,
    lengthMs,
    concerns,
    label,
  } as const
  return [{ id: `stopWindowCloses:${id}`, ...common }]
}

/** Planned stops still to come, and an overdue one while its segment runs. */
function plannedStops(asked: Asked): readonly Obligation[] {
  const { state, now, outlooks, concerns } = asked
  const stops = planInForce(state, now)?.stops ?? []
  const done = servedStops(state, now)
  const isIn = phaseOf(state, now).carIn !== undefined
  return stops.flatMap((stop): readonly Obligation[] => {
    const outlook = outlooks.find((one) => one.item.id === stop.segment)
    if (!outlook || done.has(stop.id)) return []
    if (outlook.state !== 'ahead' && outlook.state !== 'running') return []
    const dueAt = positionAt(outlook, stop.atMs, now)
    if (isIn && dueAt <= now) return []
    const held = standsStill(state, outlook, now)
    return [
      {
        id: `plannedStop:${stop.id}`,
        kind: 'plannedStop',
        dueAt,
        held,
        ...sinceStopBefore(stop, stops),
        concerns,
        label: labelOf(stop),
      },
    ]
  })
}

/** From the stop the plan has before it in its segment, or from green. */
function sinceStopBefore(
  { segment, atMs }: PlanStop,
  stops: readonly PlanStop[],
): Pick<Obligation, 'lengthMs'> {
  const before = stops
    .filter((stop) => stop.segment === segment && stop.atMs < atMs)
    .reduce((last, stop) => Math.max(last, stop.atMs), 0)
  return atMs === before ? {} : { lengthMs: atMs - before }
}

function labelOf(stop: PlanStop): string {
  const sort = stop.mandatory ? 'Mandatory stop' : 'Planned stop'
  return stop.task === undefined ? sort : `${sort}: ${stop.task}`
}
