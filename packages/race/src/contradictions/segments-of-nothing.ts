import type { Contradiction } from './contradiction.ts'
import { capital, type Look } from './ground.ts'

/** A programme without a segment, and segments without a length. */
export const segmentsOfNothing: Look = ({ segments, segmentName }) => {
  if (segments.length === 0) {
    const why = 'Without one nothing can be given green.'
    return [{ id: 'segmentsOfNothing', rules: [], what: 'There is no segment.', why }]
  }
  return segments
    .filter(({ length }) => (length.by === 'time' ? length.lengthMs : length.laps) === 0)
    .map(({ id }): Contradiction => ({
      ...{ id: `segmentsOfNothing:${id}`, rules: [] },
      what: `${capital(segmentName(id))} has no length.`,
      why: 'It would be over as it begins.',
    }))
}
