/** What an entry says, in a few words, as the wall and its undo repeat it. */
import type { Kind, ReadEntry } from '@pitlamp/race'
import { DUTY_WORD, moveWords } from './moves.ts'

type NameOf = (person: string) => string

const PLAIN = {
  'green.1': 'Green',
  'trackCall.1': 'Power is off',
  'powerOn.1': 'Power is on',
  'redFlag.1': 'Red flag',
  'segmentEnd.1': 'Segment over',
  'segmentChanged.1': 'Segment changed',
  'clockRead.1': 'Clock set',
  'programmeMoved.1': 'Programme moved',
  'laneDrawn.1': 'Lane drawn',
  'penalty.1': 'Penalty',
  'penaltyServed.1': 'Penalty served',
  'penaltyWithdrawn.1': 'Penalty withdrawn',
  'lapsCorrected.1': 'Laps corrected',
  'ruling.1': 'Ruling',
  'scrutineering.1': 'Scrutineering',
  'released.1': 'Car released',
  'classification.1': 'Classification',
  'handover.1': 'Change',
  'inControl.1': 'In control',
  'dutyTaken.1': 'Duty taken',
  'dutyLeft.1': 'Duty left',
  'availability.1': 'Availability',
  'call.1': 'Call',
  'answer.1': 'Answer',
  'stopIn.1': 'Car in',
  'stopOut.1': 'Car out',
  'incident.1': 'Incident',
  'faultNoted.1': 'Fault',
  'repairStarted.1': 'Repair started',
  'repairPaused.1': 'Repair paused',
  'repairFinished.1': 'Mended',
  'faultLeft.1': 'Fault left',
  'partFitted.1': 'Part fitted',
  'partRemoved.1': 'Part removed',
  'carExchanged.1': 'Car exchanged',
  'measured.1': 'Measured',
  'inspected.1': 'Inspected',
  'energy.1': 'Energy',
  'workTicked.1': 'Work ticked',
  'adopted.1': 'Adopted',
  'advised.1': 'Advice',
  'note.1': 'Note',
  'photograph.1': 'Photograph',
  'action.1': 'Action',
  'correction.1': 'Correction',
} as const satisfies Record<Kind, string>

export const INCIDENT_WORD = {
  deSlot: 'De-slot',
  wrongLane: 'Wrong lane',
  contact: 'Contact',
  stuck: 'Stuck',
  other: 'Incident',
} as const

const ANSWER_WORD = { heard: 'heard', coming: 'coming', cannot: 'cannot come' } as const

/** One short line; the parts a person recognises it by, never all of it. */
export function entryWords(entry: ReadEntry, nameOf: NameOf): string {
  switch (entry.kind) {
    case 'incident.1': {
      const word = INCIDENT_WORD[entry.body.what]
      return entry.body.where === undefined ? word : `${word}, ${entry.body.where}`
    }
    case 'faultNoted.1':
      return `Fault: ${entry.body.fault}`
    case 'handover.1':
      return entry.body.moves.map((move) => moveWords(move, nameOf)).join(', ')
    case 'dutyTaken.1':
      return `${nameOf(entry.body.person)}: ${DUTY_WORD[entry.body.duty].toLowerCase()}`
    case 'dutyLeft.1':
      return `${nameOf(entry.body.person)} left the duty`
    case 'call.1':
      return `To ${nameOf(entry.body.person)}: ${entry.body.words}`
    case 'answer.1':
      return `Call ${ANSWER_WORD[entry.body.answer]}`
    case 'note.1':
      return `Note: ${entry.body.words}`
    case 'stopIn.1':
      return entry.body.moment === 'stopped' ? 'Car in, stopped' : 'Car in, pit entry'
    default:
      return PLAIN[entry.kind]
  }
}

export function kindWords(kind: Kind): string {
  return PLAIN[kind]
}
