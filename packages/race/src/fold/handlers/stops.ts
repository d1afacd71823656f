/** Visits of the car: up to four moments each, whoever saw them. */
import type { EntryOf } from '../../entry/read.ts'
import type { Draft, StopDraft } from '../draft.ts'
import { applyMoves } from '../duties.ts'
import { mendedInStop } from './faults.ts'
import { alreadySo, outOfPlace, type Handler } from './handler.ts'

export const stopIn: Handler<'stopIn.1'> = (draft, entry, at) => {
  const { moment, planned } = entry.body
  const stop = draft.car.stops.at(-1)
  if (!stop || isOut(stop)) {
    const visit = newVisit(draft, entry)
    visit.moments[moment] = { entry: entry.id, at }
    if (planned !== undefined) visit.planned = planned
  } else if (stop.moments[moment]) {
    alreadySo(draft, [stop.moments[moment].entry, entry.id], 'The car was already in.')
  } else if (moment === 'pitEntry') {
    outOfPlace(
      draft,
      [stop.entry, entry.id],
      'The car came into the pits after it had stopped there.',
    )
  } else {
    stop.moments[moment] = { entry: entry.id, at }
    if (planned !== undefined && stop.planned === undefined) stop.planned = planned
  }
}

/** Moves hold and work counts whatever becomes of the moment: they were said. */
export const stopOut: Handler<'stopOut.1'> = (draft, entry, at) => {
  const { moment, work = [], moves = [] } = entry.body
  const stop = visitLeftBy(draft, entry)
  if (stop.moments[moment]) {
    alreadySo(draft, [stop.moments[moment].entry, entry.id], 'The car was already out.')
  } else if (moment === 'leaving' && stop.moments.pitExit) {
    outOfPlace(draft, [stop.entry, entry.id], 'The car left its box after it had left the pits.')
  } else {
    stop.moments[moment] = { entry: entry.id, at }
  }
  stop.work.push(...work)
  mendedInStop(draft, entry, at)
  applyMoves(draft, moves, { entry: entry.id, at })
}

function visitLeftBy(draft: Draft, entry: EntryOf<'stopOut.1'>): StopDraft {
  const stop = draft.car.stops.at(-1)
  if (stop) return stop
  outOfPlace(draft, [entry.id], 'The car went out without having come in.')
  return newVisit(draft, entry)
}

function newVisit(draft: Draft, entry: EntryOf<'stopIn.1' | 'stopOut.1'>): StopDraft {
  const visit: StopDraft = { entry: entry.id, moments: {}, work: [] }
  const segment = draft.raceControl.running?.segment
  if (segment !== undefined) visit.segment = segment
  draft.car.stops.push(visit)
  return visit
}

function isOut(stop: StopDraft): boolean {
  return stop.moments.leaving !== undefined || stop.moments.pitExit !== undefined
}
