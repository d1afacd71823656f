/** Calls nobody has answered: how often they were repeated, and to whom they have passed. */
import { CALL_DEFAULTS } from '../documents/plan.ts'
import type { CrewMember } from '../documents/crew.ts'
import { inForce } from '../fold/in-force.ts'
import type { CallState, State } from '../fold/state.ts'
import { dutyOf } from './duties.ts'

export interface CallNow {
  readonly call: CallState
  /** When it was called, or is to be. */
  readonly dueAt: number
  /** A wake-up call that is still to come; nobody answered; passed to somebody else. */
  readonly state: 'ahead' | 'waiting' | 'passedOn'
  /** 0 for the call itself. */
  readonly repetition: number
  /** Whom it calls now: a person, or the wall. */
  readonly to: string
  /** When it is called out next. */
  readonly nextAt: number
}

export const THE_WALL = 'wall'

/**
 * In the order of the log. A call to a person takes the place of earlier ones to them once it is due; one that is
 * still ahead leaves them be. Unanswered it is repeated, and passes on from person to person, in the crew's order
 * after the one called, of those who are here and off duty at `now`; after the last of them to the wall.
 */
export function callsNow(state: State, now: number): readonly CallNow[] {
  const latest = new Map<string, CallState>()
  for (const call of state.people.calls) {
    const before = latest.get(call.body.person)
    if (dueAtOf(call) > now) continue
    if (!before || dueAtOf(call) >= dueAtOf(before)) latest.set(call.body.person, call)
  }
  return state.people.calls
    .filter((call) => !call.answer)
    .filter((call) => dueAtOf(call) > now || latest.get(call.body.person) === call)
    .map((call) => callNow(state, call, now))
}

function dueAtOf({ at, body }: CallState): number {
  return Math.max(at, body.dueAt ?? at)
}

function callNow(state: State, call: CallState, now: number): CallNow {
  const captain = inForce(state, 'plan', now)?.captain
  const { callRepeatMs, callPassOnMs } = { ...CALL_DEFAULTS, ...captain }
  const dueAt = dueAtOf(call)
  const { person } = call.body
  if (dueAt > now) return { call, dueAt, state: 'ahead', repetition: 0, to: person, nextAt: dueAt }
  const repetition = Math.floor((now - dueAt) / callRepeatMs)
  const passed = Math.floor((now - dueAt) / callPassOnMs)
  const to = passed === 0 ? person : (whoIsNext(state, person, now)[passed - 1] ?? THE_WALL)
  const nextAt = dueAt + (repetition + 1) * callRepeatMs
  return { call, dueAt, state: passed === 0 ? 'waiting' : 'passedOn', repetition, to, nextAt }
}

function whoIsNext(state: State, called: string, now: number): readonly string[] {
  const people = inForce(state, 'crew', now)?.people ?? []
  const place = people.findIndex(({ id }) => id === called)
  return [...people.slice(place + 1), ...people.slice(0, Math.max(0, place))]
    .filter((member) => member.id !== called && isFree(state, member, now))
    .map(({ id }) => id)
}

/** Whoever said nothing is here when the crew's list has them there; whoever has no duty is off duty. */
function isFree(state: State, { id, there }: CrewMember, now: number): boolean {
  const said = state.people.availability[id]?.state
  if (said === 'late' || said === 'away' || said === 'unwell') return false
  const duty = dutyOf(state, id)?.duty ?? 'offDuty'
  if (duty !== 'offDuty') return false
  if (said === 'here' || !there || there.length === 0) return true
  return there.some(({ fromAt = -Infinity, toAt = Infinity }) => fromAt <= now && now < toAt)
}
