import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { known } from '../rules/shape.ts'
import { positionAt } from '../time/plan-spans.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { segmentsOf } from '../time/programme.ts'
import { workRule } from './during.ts'
import { servedStops } from './served-stops.ts'

/**
 * About when the car stands next without its cost: at the next stop the plan still has, or at the next lane change,
 * where work is allowed in it. Undefined where neither comes.
 */
export function repairOpportunityAt(
  state: State,
  now: number,
  { onlyUnderGreen }: { readonly onlyUnderGreen: boolean | 'notKnown' },
): number | undefined {
  const regulations = inForce(state, 'rules', now)
  const programme = regulations?.programme ?? []
  const served = servedStops(state, now)
  const mayAtLaneChange =
    onlyUnderGreen !== true && known(workRule(regulations, 'laneChange')?.value.allowed) !== false
  const times = segmentsOf(state, now).flatMap((outlook): readonly number[] => {
    if (outlook.state !== 'ahead' && outlook.state !== 'running') return []
    const stops = (planInForce(state, now)?.stops ?? [])
      .filter((stop) => stop.segment === outlook.item.id && !served.has(stop.id))
      .map((stop) => positionAt(outlook, stop.atMs, now))
    const line = programme.findIndex(({ id }) => id === outlook.item.id)
    const changes = mayAtLaneChange && programme[line + 1]?.kind === 'laneChange'
    return changes && outlook.endsAt !== undefined ? [...stops, outlook.endsAt] : stops
  })
  const ahead = times.filter((at) => at >= now)
  return ahead.length === 0 ? undefined : Math.min(...ahead)
}
