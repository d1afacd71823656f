/** Who moves where while cars move lane, and who of them has. */
import type { PlanSpan } from '../documents/plan.ts'
import type { Move } from '../entry/scalars.ts'
import type { DutySpan, State } from '../fold/state.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { plannedDuties } from '../time/plan-spans.ts'
import { isThereAlready } from './duties.ts'
import type { LaneChange } from './lane-change.ts'
import { nextHandover } from './next-handover.ts'

export interface MoveStep {
  readonly move: Move
  readonly done: boolean
}

interface Asked {
  /** The one that comes. */
  readonly segment: string
  readonly since: number
  readonly now: number
}

/** What the plan wants from the next green on: moves to come are those of the handover, which can be done in order. */
export function movesOfChange(
  state: State,
  { segment, since, now }: Asked,
): Pick<LaneChange, 'driver' | 'moves' | 'posts'> {
  const starts = plannedDuties(planInForce(state, now), segment).filter(
    ({ fromMs, toMs }) => fromMs === 0 && toMs > 0,
  )
  const handover = nextHandover(state, now)
  const isForGreen = handover?.clockMs === 0 && handover.spans[0]?.segment === segment
  const toCome = isForGreen ? handover.moves : []
  const driver = starts.find(({ duty }) => duty === 'controller')?.person
  return {
    ...(driver === undefined ? {} : { driver }),
    moves: [
      ...madeMoves(state, starts, since).map((move) => ({ move, done: true })),
      ...toCome.map((move) => ({ move, done: false })),
    ],
    posts: starts
      .filter(({ duty }) => duty === 'post')
      .map(({ person, post }) => (post === undefined ? { person } : { person, post })),
  }
}

/** Who came to a duty of the next green since the segment ended, or went off duty, in the order in which they did. */
function madeMoves(state: State, starts: readonly PlanSpan[], since: number): readonly Move[] {
  return state.people.duties
    .filter((duty) => duty.toAt === undefined && duty.fromAt >= since)
    .filter(
      ({ person, duty }) =>
        duty === 'offDuty' ||
        starts.some((span) => span.person === person && isThereAlready(state, span)),
    )
    .map(moveOf)
}

function moveOf({ person, duty, post }: DutySpan): Move {
  return post === undefined ? { person, duty } : { person, duty, post }
}
