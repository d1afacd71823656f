/** The left of the wall: who has which duty, how long the stint still is, what the next handover is. */
import {
  dutiesNow,
  phaseOf,
  planInForce,
  stintClock,
  type Duty,
  type NextHandover,
  type State,
} from '@pitlamp/race'
import type { CrewNames } from '../../parts/crew.ts'
import { DUTY_WORD, moveWords } from '../../parts/moves.ts'
import type { DutyShown, HandoverShown, RestShown, StintShown } from '../../parts/shown.ts'
import { steady } from '../../parts/steady.ts'
import { clockTime, countdown, figure } from '../../parts/time.ts'
import { urgencyOf } from '../../parts/urgency.ts'
import { absenceWords } from './presence.ts'

export interface Seen {
  readonly state: State
  readonly now: number
  readonly crew: CrewNames
}

/** Counts down to the planned end, then up from it; counts up where no plan says when. */
export function stintShown({ state, now, crew }: Seen): StintShown {
  const stint = stintClock(state, now)
  if (!stint) return waitingDriver({ state, now, crew })
  const { person } = stint
  const name = crew.nameOf(person)
  const held = !stint.running
  if (stint.toGoMs === undefined || stint.plannedEndAt === undefined) {
    return {
      person,
      name,
      held,
      urgency: 'calm',
      lit: false,
      label: 'driving for',
      figure: figure(stint.drivenMs),
    }
  }
  const { toGoMs, lengthMs = 0 } = stint
  const plannedEnd = `planned end ${clockTime(stint.plannedEndAt, crew.timeZone)}`
  const urgency = urgencyOf('stintEnd', toGoMs)
  if (toGoMs < 0) {
    return {
      person,
      name,
      held,
      urgency,
      lit: false,
      label: 'over the plan',
      figure: `+${figure(toGoMs)}`,
      left: 0,
      plannedEnd,
    }
  }
  return {
    person,
    name,
    held,
    urgency,
    lit: false,
    label: 'left in this stint',
    figure: steady(countdown(toGoMs), countdown(lengthMs)),
    left: lengthMs > 0 ? toGoMs / lengthMs : 0,
    plannedEnd,
  }
}

/** Before green nobody's time runs, yet somebody holds the controller. */
function waitingDriver({ state, now, crew }: Seen): StintShown {
  const driver = driverNow(state)
  const label = phaseOf(state, now).phase === 'finished' ? 'the race is over' : 'counts from green'
  const still = { held: false, urgency: 'calm', lit: false, label } as const
  return driver === undefined ? still : { ...still, person: driver, name: crew.nameOf(driver) }
}

const ORDER: readonly Duty[] = ['controller', 'post', 'wall', 'bench']

/** Everybody with a duty but the driver, marshals first; who is off duty is left out. */
export function dutiesShown({ state, crew }: Seen): readonly DutyShown[] {
  return dutiesNow(state)
    .filter(({ duty }) => duty !== 'controller' && duty !== 'offDuty')
    .sort((a, b) => ORDER.indexOf(a.duty) - ORDER.indexOf(b.duty))
    .map(({ entry, person, duty, post }) => ({
      id: `${entry} ${person}`,
      person,
      duty: DUTY_WORD[duty],
      name: crew.nameOf(person),
      where: post === undefined ? undefined : `post ${post}`,
      presence: absenceWords(state, person, crew),
    }))
}

/** Everybody else in the crew: off duty, or nobody said. */
export function restShown({ state, crew }: Seen): readonly RestShown[] {
  const busy = new Set(
    dutiesNow(state).flatMap((one) => (one.duty === 'offDuty' ? [] : one.person)),
  )
  return crew.people
    .filter(({ id }) => !busy.has(id))
    .map(({ id, name }) => ({ id, name, presence: absenceWords(state, id, crew) }))
}

export function handoverShown(
  next: NextHandover | undefined,
  { now, crew }: Seen,
): HandoverShown | undefined {
  if (!next || next.moves.length === 0) return undefined
  const when = next.at <= now ? 'Due now' : `About ${clockTime(next.at, crew.timeZone)}`
  return {
    when: next.moves.length > 1 ? `${when}, in this order` : when,
    steps: next.moves.map((move) => moveWords(move, crew.nameOf)),
  }
}

export function driverNow(state: State): string | undefined {
  return dutiesNow(state).find(({ duty }) => duty === 'controller')?.person
}

/** Posts the plan or the race has named so far, in reading order; the first eight where it named none. */
export function postsOf(state: State, now: number): readonly string[] {
  const named = [...(planInForce(state, now)?.spans ?? []), ...state.people.duties]
  const posts = new Set(named.flatMap(({ post }) => (post === undefined ? [] : [post])))
  return posts.size === 0 ? FIRST_POSTS : [...posts].sort(byNumberThenName)
}

const FIRST_POSTS = ['1', '2', '3', '4', '5', '6', '7', '8']

function byNumberThenName(a: string, b: string): number {
  return (Number(a) || 99) - (Number(b) || 99) || (a < b ? -1 : 1)
}
