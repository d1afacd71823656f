/** The plan as it holds: the version in force, with the handovers that were moved since it was adopted. */
import type { Plan, PlanSpan } from '../documents/plan.ts'
import type { Regulations } from '../documents/rules.ts'
import { adoptionInForce, inForce } from '../fold/in-force.ts'
import type { Adoption, State } from '../fold/state.ts'
import { lanesOf } from './lanes.ts'
import { onLanes } from './plan-on-lanes.ts'
import { plannedDuties } from './plan-spans.ts'
import { withinLength } from './plan-within-length.ts'

/** Where the version in force has a handover of the controller, and where it comes instead. */
export interface MovedHandover {
  readonly segment: string
  readonly boundaryMs: number
  readonly toMs: number
}

/**
 * Stay-outs move what the version has that was in force when they were pressed, and so do segments made shorter or
 * longer; a version adopted later stands as it is, and so does a segment that is run again. Sit-outs and posts follow
 * the lanes as they are drawn. Undefined where no plan was adopted.
 */
export function planInForce(state: State, now: number): Plan | undefined {
  const adoption = adoptionInForce(state, 'plan', now)
  if (!adoption) return undefined
  const regulations = inForce(state, 'rules', now)
  const before = reckoned.get(state)
  if (before?.adoption === adoption && before.regulations === regulations) return before.plan
  const plan = reckon(state, adoption, now)
  reckoned.set(state, { adoption, regulations, plan })
  return plan
}

interface Reckoned {
  readonly adoption: Adoption<'plan'>
  readonly regulations: Regulations | undefined
  readonly plan: Plan
}

/** Every clock of every person asks for it, of a state that does not change: reckoned once for each. */
const reckoned = new WeakMap<State, Reckoned>()

function reckon(state: State, adoption: Adoption<'plan'>, now: number): Plan {
  const moved = movedHandovers(state, adoption).reduce(withHandoverMoved, adoption.content)
  const within = withinLength(moved, state, adoption)
  return onLanes(within, inForce(state, 'rules', now), lanesOf(state, now))
}

/** Those that move anything, in the order of their first press; several of one handover add up. */
export function movedHandovers(state: State, adoption: Adoption<'plan'>): readonly MovedHandover[] {
  const sums = new Map<string, MovedHandover>()
  for (const { at, body } of state.people.stayOuts) {
    if (adoptionInForce(state, 'plan', at) !== adoption) continue
    const { segment, boundaryMs, byMs } = body
    if (isOfEarlierRun(state, segment, at)) continue
    const key = `${segment} ${boundaryMs}`
    const toMs = (sums.get(key)?.toMs ?? boundaryMs) + byMs
    sums.set(key, { segment, boundaryMs, toMs })
  }
  return [...sums.values()].flatMap((moved) => {
    const lastMs = furthestMs(state, adoption.content, moved)
    const toMs = Math.min(moved.toMs, lastMs ?? moved.boundaryMs)
    return toMs > moved.boundaryMs ? [{ ...moved, toMs }] : []
  })
}

/** Said in a run that is to be run again, or was: the next one begins as it is planned. */
function isOfEarlierRun({ raceControl }: State, segment: string, at: number): boolean {
  const runs = raceControl.runs.filter((run) => run.segment === segment)
  const run = runs.filter(({ greenAt }) => greenAt <= at).at(-1)
  if (!run) return false
  if (run !== runs.at(-1)) return true
  return (
    run.endAt !== undefined &&
    raceControl.segmentChanges.some(
      (said) =>
        said.at >= at && said.body.segment === segment && said.body.change.what === 'runAgain',
    )
  )
}

/**
 * How far a handover can move: to the end of the stint that begins with it, or of the segment. Undefined where
 * the plan has no stint that ends there.
 */
export function furthestMs(
  state: State,
  plan: Plan,
  { segment, boundaryMs }: Pick<MovedHandover, 'segment' | 'boundaryMs'>,
): number | undefined {
  const stints = plannedDuties(plan, segment).filter((span) => span.duty === 'controller')
  if (!stints.some((stint) => stint.toMs === boundaryMs)) return undefined
  const next = stints.filter((stint) => stint.fromMs === boundaryMs).map((stint) => stint.toMs)
  const run = state.raceControl.runs.filter((one) => one.segment === segment).at(-1)
  const ends = run?.length.by === 'time' ? [...next, run.length.lengthMs] : next
  return ends.length === 0 ? undefined : Math.max(boundaryMs, Math.min(...ends))
}

/**
 * Whoever begins or ends a duty there does so at the new place; what they would have done between the two falls
 * away. Stops planned for that handover move along.
 */
function withHandoverMoved(plan: Plan, moved: MovedHandover): Plan {
  const { segment, boundaryMs, toMs } = moved
  const meets = (span: PlanSpan) => span.fromMs === boundaryMs || span.toMs === boundaryMs
  const here = plan.spans.filter((span) => span.segment === segment)
  const concerned = new Set(here.filter(meets).map((span) => span.person))
  return {
    ...plan,
    spans: plan.spans.flatMap((span) => {
      if (span.segment !== segment || !concerned.has(span.person)) return [span]
      return spanMoved(span, moved)
    }),
    stops: plan.stops.map((stop) =>
      stop.segment === segment && stop.atMs === boundaryMs ? { ...stop, atMs: toMs } : stop,
    ),
  }
}

function spanMoved(span: PlanSpan, { boundaryMs, toMs }: MovedHandover): readonly PlanSpan[] {
  if (span.toMs === boundaryMs) return [{ ...span, toMs }]
  if (span.fromMs < boundaryMs || span.fromMs >= toMs) return [span]
  return span.toMs > toMs ? [{ ...span, fromMs: toMs }] : []
}
