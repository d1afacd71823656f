/** Who has which duty, who is where, calls and answers. */
import type { peopleKinds } from '../../entry/kinds/people.ts'
import { applyMoves, leaveDuty } from '../duties.ts'
import { personName } from '../names.ts'
import type { Availability } from '../state.ts'
import { alreadySo, outOfPlace, said, type Handler, type Handlers } from './handler.ts'

const handover: Handler<'handover.1'> = (draft, entry, at) => {
  if (applyMoves(draft, entry.body.moves, { entry: entry.id, at })) return
  alreadySo(draft, [entry.id], 'Everybody in this handover already had that duty.')
}

const dutyTaken: Handler<'dutyTaken.1'> = (draft, entry, at) => {
  if (applyMoves(draft, [entry.body], { entry: entry.id, at })) return
  const name = personName(draft, entry.body.person)
  alreadySo(draft, [entry.id], `${name} already had that duty.`)
}

const dutyLeft: Handler<'dutyLeft.1'> = (draft, entry, at) => {
  if (leaveDuty(draft.people, entry.body.person, at)) return
  alreadySo(draft, [entry.id], `${personName(draft, entry.body.person)} had no duty to leave.`)
}

const availability: Handler<'availability.1'> = (draft, entry, at) => {
  const { person, state, until } = entry.body
  const now: Availability = { entry: entry.id, at, state }
  draft.people.availability.set(person, until === undefined ? now : { ...now, until })
}

const call: Handler<'call.1'> = (draft, entry, at) => {
  const { id, body, person, device } = entry
  draft.people.calls.set(id, { entry: id, at, body, by: person ?? device })
}

/** A later answer takes the place of an earlier one: heard, then coming. */
const answer: Handler<'answer.1'> = (draft, entry, at) => {
  const answered = draft.people.calls.get(entry.body.call)
  if (answered) answered.answer = { entry: entry.id, at, answer: entry.body.answer }
  else outOfPlace(draft, [entry.id], 'An answer came to a call that is not in the log.')
}

export const peopleHandlers: Handlers<keyof typeof peopleKinds> = {
  'handover.1': handover,
  'inControl.1': (draft, entry, at) => draft.people.inControl.push(said(entry, at)),
  'dutyTaken.1': dutyTaken,
  'dutyLeft.1': dutyLeft,
  'availability.1': availability,
  'call.1': call,
  'answer.1': answer,
  'stayOut.1': (draft, entry, at) => draft.people.stayOuts.push(said(entry, at)),
}
