/** What race control's desk shows and hands out: its clock, lanes, the car. */
import { segmentName } from '../names.ts'
import { setClock } from '../running.ts'
import { inForce } from '../in-force.ts'
import { alreadySo, outOfPlace, said, type Handler } from './handler.ts'

/** A reading sets the race clock from here on. What it cannot mean is listed and changes nothing. */
export const clockRead: Handler<'clockRead.1'> = (draft, entry, at) => {
  const { segment, shows, readingMs } = entry.body
  const { running } = draft.raceControl
  if (running?.segment !== segment) {
    const name = segmentName(draft, segment)
    outOfPlace(draft, [entry.id], `The hall’s clock was read for ${name}, which was not running.`)
    return
  }
  if (shows === 'gone') {
    setClock(running, readingMs, { entry, at })
    return
  }
  const { length } = running
  if (length.by === 'laps') {
    outOfPlace(
      draft,
      [entry.id],
      'Time to go was read, but how long this segment lasts is not known.',
    )
  } else if (readingMs > length.lengthMs) {
    outOfPlace(
      draft,
      [entry.id],
      'The hall’s clock was read with more to go than the segment lasts.',
    )
  } else {
    setClock(running, length.lengthMs - readingMs, { entry, at })
  }
}

/** It speaks for its segment and all after it, also where one of them was drawn before. */
export const startDrawn: Handler<'startDrawn.1'> = (draft, entry, at) => {
  const { starts, lanes } = draft.raceControl
  const { segment } = entry.body
  starts.push(said(entry, at))
  const ids = (inForce(draft, 'rules', at)?.programme ?? [])
    .filter((item) => item.kind === 'segment')
    .map(({ id }) => id)
  const from = segment === undefined ? 0 : ids.indexOf(segment)
  if (from < 0) {
    outOfPlace(draft, [entry.id], 'A lane was drawn from a segment that is not in the programme.')
    return
  }
  for (const id of ids.slice(from)) lanes.delete(id)
}

/** A lane may be drawn again: the last one counts. */
export const laneDrawn: Handler<'laneDrawn.1'> = (draft, entry) => {
  draft.raceControl.lanes.set(entry.body.segment, entry.body.lane)
}

export const released: Handler<'released.1'> = (draft, entry, at) => {
  if (draft.raceControl.releasedAt === undefined) draft.raceControl.releasedAt = at
  else alreadySo(draft, [entry.id], 'The car was already released.')
}
