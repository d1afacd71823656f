/** What each verb without a sheet records. */
import { countedMoments, type Phase, type State } from '@pitlamp/race'
import { INCIDENT_WORD } from '../../parts/entry-words.ts'
import { plannedStopNear } from './stop-to-serve.ts'
import type { ToRecord } from './to-record.ts'
import type { SheetVerb, WallVerb } from './verb-words.ts'

interface At {
  readonly state: State
  readonly now: number
  readonly phase: Phase
}

/** Undefined where the segment it is about is not there. */
export function verbToRecord(
  verb: Exclude<WallVerb, SheetVerb> | 'greenAgain',
  at: At,
): ToRecord | undefined {
  const { next, segment } = at.phase
  switch (verb) {
    case 'green':
      return next && { kind: 'green.1', body: { segment: next.item.id }, word: 'Green' }
    case 'greenAgain':
      return segment && { kind: 'green.1', body: { segment: segment.item.id }, word: 'Green' }
    case 'powerOn':
      return { kind: 'powerOn.1', body: {}, word: 'Power on' }
    case 'powerOff':
      return { kind: 'trackCall.1', body: {}, word: 'Power off' }
    case 'redFlag':
      return { kind: 'redFlag.1', body: {}, word: 'Red flag' }
    case 'segmentOver': {
      const body = segment && { segment: segment.item.id }
      return body && { kind: 'segmentEnd.1', body, word: 'Segment over' }
    }
    case 'carIn':
      return carIn(at)
    case 'deSlot':
    case 'wrongLane':
    case 'contact':
    case 'stuck':
      return { kind: 'incident.1', body: { what: verb }, word: INCIDENT_WORD[verb] }
  }
}

function carIn({ state, now }: At): ToRecord {
  const moment = countedMoments(state, now).from
  const body = { moment, planned: plannedStopNear(state, now)?.id }
  return { kind: 'stopIn.1', body, word: 'Car in' }
}
