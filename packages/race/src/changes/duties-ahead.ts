/** What the plan still asks of one person, as far as the meeting has come. */
import type { PlanSpan } from '../documents/plan.ts'
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { cutOut } from '../checks/stretches.ts'
import { awayNow } from '../time/away.ts'
import { lanesOf, type SegmentLane } from '../time/lanes.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { plannedDuties, positionAt } from '../time/plan-spans.ts'
import { segmentsOf } from '../time/programme.ts'

export interface DutyAhead {
  readonly span: PlanSpan
  /** About when, in meeting time. */
  readonly startsAt: number
  readonly endsAt: number
  /** Of the car, where the segment has one. */
  readonly lane?: SegmentLane
  /** For how long of it the person is not there, by the crew list and by what was said since. */
  readonly awayMs: number
}

/** From the running segment on, what is not over yet, in the order of the programme. Being off duty is none. */
export function dutiesAhead(state: State, person: string, now: number): readonly DutyAhead[] {
  const plan = planInForce(state, now)
  const lanes = lanesOf(state, now)
  return segmentsOf(state, now).flatMap((outlook): readonly DutyAhead[] => {
    if (outlook.state !== 'ahead' && outlook.state !== 'running') return []
    const lane = lanes.get(outlook.item.id)
    return plannedDuties(plan, outlook.item.id)
      .filter((span) => span.person === person && span.duty !== 'offDuty')
      .map((span) => {
        const startsAt = positionAt(outlook, span.fromMs, now)
        const endsAt = positionAt(outlook, span.toMs, now)
        const awayMs = awayIn(state, { person, startsAt, endsAt, now })
        return { span, startsAt, endsAt, awayMs, ...(lane === undefined ? {} : { lane }) }
      })
      .filter(({ endsAt }) => endsAt > now)
  })
}

interface Asked {
  readonly person: string
  readonly startsAt: number
  readonly endsAt: number
  readonly now: number
}

function awayIn(state: State, { person, startsAt, endsAt, now }: Asked): number {
  const duty = { fromAt: startsAt, toAt: endsAt }
  const there = inForce(state, 'crew', now)?.people.find(({ id }) => id === person)?.there ?? []
  const presence = there.map(({ fromAt = -Infinity, toAt = Infinity }) => ({ fromAt, toAt }))
  const byList = presence.length === 0 ? [] : cutOut(duty, presence)
  const said = awayNow(state, now).get(person)
  const free = cutOut(duty, said ? [...byList, said] : byList)
  return endsAt - startsAt - free.reduce((sum, { fromAt, toAt }) => sum + toAt - fromAt, 0)
}
