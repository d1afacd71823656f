import { callsNow, THE_WALL, type CallNow } from '../clocks/calls-now.ts'
import { dutiesNow } from '../clocks/duties.ts'
import { CALL_DEFAULTS } from '../documents/plan.ts'
import { inForce } from '../fold/in-force.ts'
import { personName } from '../fold/names.ts'
import type { State } from '../fold/state.ts'
import type { Obligation } from './obligation.ts'

/**
 * Wake-up calls to come, and calls nobody answered. Each repetition has an id of its own, so that each is heard; the
 * last that was due stands until the next one is.
 */
export function callsDue(state: State, now: number): readonly Obligation[] {
  const captain = inForce(state, 'plan', now)?.captain
  const { callRepeatMs } = { ...CALL_DEFAULTS, ...captain }
  return callsNow(state, now).flatMap((call): readonly Obligation[] => [
    ...wakeUp(call),
    ...(call.state === 'ahead' ? [] : [unanswered(state, call, callRepeatMs)]),
  ])
}

/** It stands beside what follows it, so that a screen that looks a little late still hears it. */
function wakeUp({ call, dueAt, repetition }: CallNow): readonly Obligation[] {
  const { entry, at, body } = call
  if (body.dueAt === undefined || repetition > 0) return []
  const id = `callDue:${entry}`
  const lengthMs = dueAt - at
  const concerns = [body.person]
  return [{ id, kind: 'callDue', dueAt, held: false, lengthMs, concerns, label: body.words }]
}

function unanswered(state: State, { call, dueAt, repetition, to }: CallNow, lengthMs: number) {
  const { entry, body } = call
  const which = Math.max(1, repetition)
  const name = personName(state, body.person)
  const isPassed = to !== body.person && to !== THE_WALL
  return {
    id: `callUnanswered:${entry}:${which}`,
    kind: 'callUnanswered',
    dueAt: dueAt + which * lengthMs,
    held: false,
    lengthMs,
    concerns: to === THE_WALL ? whoIsAtTheWall(state) : [to],
    label: isPassed
      ? `${name} has not answered: ${personName(state, to)}`
      : `${name} has not answered`,
  } as const
}

function whoIsAtTheWall(state: State): readonly string[] {
  return dutiesNow(state)
    .filter(({ duty }) => duty === 'wall')
    .map(({ person }) => person)
}
