/** What race control does or says: the kinds that are kept as said, and where to find the others. */
import type { raceControlKinds } from '../../entry/kinds/race-control.ts'
import { said, type Handlers } from './handler.ts'
import { penalty, penaltyServed, penaltyWithdrawn } from './penalties.ts'
import { powerOn, redFlag, trackCall } from './power.ts'
import { clockRead, laneDrawn, released, startDrawn } from './race-office.ts'
import { green, segmentChanged, segmentEnd } from './segments.ts'

export const raceControlHandlers: Handlers<keyof typeof raceControlKinds> = {
  'green.1': green,
  'trackCall.1': trackCall,
  'powerOn.1': powerOn,
  'redFlag.1': redFlag,
  'segmentEnd.1': segmentEnd,
  'segmentChanged.1': segmentChanged,
  'clockRead.1': clockRead,
  'programmeMoved.1': (draft, entry, at) => draft.raceControl.moves.push(said(entry, at)),
  'startDrawn.1': startDrawn,
  'laneDrawn.1': laneDrawn,
  'penalty.1': penalty,
  'penaltyServed.1': penaltyServed,
  'penaltyWithdrawn.1': penaltyWithdrawn,
  'lapsCorrected.1': (draft, entry, at) => draft.raceControl.lapsCorrections.push(said(entry, at)),
  'ruling.1': (draft, entry, at) => draft.raceControl.rulings.push(said(entry, at)),
  'scrutineering.1': (draft, entry, at) => draft.raceControl.verdicts.push(said(entry, at)),
  'released.1': released,
  'classification.1': (draft, entry, at) => draft.raceControl.classifications.push(said(entry, at)),
}
