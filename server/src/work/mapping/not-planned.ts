/** Kinds of rule that ask nothing of a rotation by themselves, each with why. */
import type { RuleKind } from '@pitlamp/race'
import type { DRIVING } from './driving-rules.ts'
import type { MARSHALS } from './marshal-rules.ts'
import type { Mappings } from './mapping.ts'
import type { STOPS } from './stop-rules.ts'

type Planned = keyof typeof DRIVING | keyof typeof STOPS | keyof typeof MARSHALS

export const NOT_PLANNED: Mappings<Exclude<RuleKind, Planned>> = {
  laneOrder: { notPlanned: 'Lanes come with the segments.' },
  startingLane: { notPlanned: 'Lanes come with the segments.' },
  tracks: { notPlanned: 'Lanes come with the segments.' },
  laneChange: { notPlanned: 'Its length is in the times of the segments.' },
  restart: { notPlanned: 'It is nobody’s duty.' },
  darkSegments: {
    notPlanned: 'It is about lights; who does not want the night says so as a wish.',
  },
  darkHours: { notPlanned: 'It is about lights; who does not want the night says so as a wish.' },
  cutProRata: { notPlanned: 'It is in the limits it cuts.' },
  countsAsDriving: { notPlanned: 'It is in what counts as driving.' },
  changeWithOneself: { notPlanned: 'It is in what begins a stint.' },
  stopMinimum: { notPlanned: 'It is in the length of a stop.' },
  trackCallStop: { notPlanned: 'Track calls are not planned.' },
  pitBox: { notPlanned: 'It is nobody’s duty.' },
  servePenalty: { notPlanned: 'Penalties are not planned.' },
  pitLaneLap: { notPlanned: 'Race control counts.' },
  workAllowed: { notPlanned: 'It is about work, not about who has which duty.' },
  whoWorks: { notPlanned: 'It is about work, not about who has which duty.' },
  bodyOffChassis: { notPlanned: 'It is about work, not about who has which duty.' },
  allowance: { notPlanned: 'It is about parts.' },
  marshalWhileDriving: { notPlanned: 'It is in which duties go together.' },
  postByLane: { notPlanned: 'It is in the names of the posts.' },
  compulsoryRepair: { notPlanned: 'Faults are not planned.' },
  clockPolicy: { notPlanned: 'It is in what counts as driving.' },
  scoring: { notPlanned: 'Results are race control’s.' },
  points: { notPlanned: 'Results are race control’s.' },
  ties: { notPlanned: 'Results are race control’s.' },
  classified: { notPlanned: 'Results are race control’s.' },
  penalty: { notPlanned: 'A rotation breaks no rule.' },
}
