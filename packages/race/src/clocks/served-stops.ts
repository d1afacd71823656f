import type { State } from '../fold/state.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { visitsOf, type Visit } from './visits.ts'

/**
 * Planned stops that are done: named by a visit; or, mandatory and not named, as many of them in the order of
 * the plan as there were mandatory visits that named none.
 */
export function servedStops(state: State, now: number): ReadonlySet<string> {
  const stops = planInForce(state, now)?.stops ?? []
  const visits = visitsOf(state, now)
  const served = new Set(visits.flatMap(({ stop }) => stop.planned ?? []))
  for (const segment of new Set(stops.map((stop) => stop.segment))) {
    const isUnnamed = (visit: Visit) => visit.mandatory && visit.stop.segment === segment
    let unnamed = visits.filter(
      (visit) => isUnnamed(visit) && visit.stop.planned === undefined,
    ).length
    const inOrder = stops.filter((stop) => stop.segment === segment && stop.mandatory)
    for (const stop of inOrder.sort((a, b) => a.atMs - b.atMs)) {
      if (unnamed === 0 || served.has(stop.id)) continue
      served.add(stop.id)
      unnamed -= 1
    }
  }
  return served
}
