/** What one more stay-out does to the plan in force. */
import type { Body } from '../entry/kinds/index.ts'
import type { Duty } from '../entry/scalars.ts'
import type { State } from '../fold/state.ts'
import { planInForce } from '../time/plan-in-force.ts'

export interface MovedSpan {
  /** The plan's line. */
  readonly span: string
  readonly person: string
  readonly duty: Duty
  readonly post?: string
  /** `dropped`: it would be over before it could begin. */
  readonly what: 'begins' | 'ends' | 'dropped'
  /** How much later; of a dropped one, how long it would have been. */
  readonly byMs: number
}

/** The state as it would be if it were pressed now. */
export function withStayOut(state: State, now: number, body: Body<'stayOut.1'>): State {
  const stayOuts = [...state.people.stayOuts, { entry: 'draft', at: now, body }]
  return { ...state, people: { ...state.people, stayOuts } }
}

/** In the plan's order. */
export function whomItMoves(
  state: State,
  now: number,
  body: Body<'stayOut.1'>,
): readonly MovedSpan[] {
  const moved = planInForce(withStayOut(state, now, body), now)?.spans ?? []
  const after = new Map(moved.map((span) => [span.id, span]))
  return (planInForce(state, now)?.spans ?? []).flatMap((span): readonly MovedSpan[] => {
    const { id, person, duty, post, fromMs, toMs } = span
    const there = after.get(id)
    const who = { span: id, person, duty, ...(post === undefined ? {} : { post }) }
    if (!there) return [{ ...who, what: 'dropped', byMs: toMs - fromMs }]
    if (there.fromMs > fromMs) return [{ ...who, what: 'begins', byMs: there.fromMs - fromMs }]
    return there.toMs > toMs ? [{ ...who, what: 'ends', byMs: there.toMs - toMs }] : []
  })
}
