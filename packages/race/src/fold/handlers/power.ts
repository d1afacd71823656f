/** Power goes off and comes on again within a running segment. */
import { interrupt, resume } from '../running.ts'
import { alreadySo, outOfPlace, type Handler } from './handler.ts'

export const trackCall: Handler<'trackCall.1'> = (draft, entry, at) => {
  const { running, interrupted } = draft.raceControl
  if (!running) {
    outOfPlace(draft, [entry.id], 'The power went off while no segment was running.')
  } else if (interrupted) {
    alreadySo(draft, [interrupted.entry, entry.id], 'The power was already off.')
  } else {
    interrupt(draft, entry, at)
  }
}

/** A red flag after a track call takes its place. */
export const redFlag: Handler<'redFlag.1'> = (draft, entry, at) => {
  const { running, interrupted } = draft.raceControl
  if (!running) {
    outOfPlace(draft, [entry.id], 'The red flag came while no segment was running.')
  } else if (interrupted?.cause === 'redFlag') {
    alreadySo(draft, [interrupted.entry, entry.id], 'The red flag was already out.')
  } else {
    interrupt(draft, entry, at)
  }
}

export const powerOn: Handler<'powerOn.1'> = (draft, entry, at) => {
  const { running, interrupted } = draft.raceControl
  if (!running) {
    outOfPlace(draft, [entry.id], 'The power came on while no segment was running.')
  } else if (!interrupted) {
    alreadySo(draft, [running.entry, entry.id], 'The power was already on.')
  } else {
    resume(draft, entry, at)
  }
}
