/** What an entry says, in a few words, as the wall and its undo repeat it. */
import type { Body, EntryOf, Kind } from '@pitlamp/race'
import { DUTY_WORD, moveWords } from './moves.ts'
import { milliText } from './pad-number.ts'
import { lapsWords, penaltyWords, PRESENCE_WORD } from './penalty-words.ts'
import { figure } from './time.ts'

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
  'startDrawn.1': 'Start drawn',
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
  'stayOut.1': 'Stay out',
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

type Spoken = { readonly [K in Kind]?: (body: Body<K>, nameOf: NameOf) => string }

/** Kinds whose bodies say more than their name. */
const SPOKEN: Spoken = {
  'penalty.1': (body) => `Penalty: ${penaltyWords(body)}`,
  'lapsCorrected.1': ({ laps }) => `Laps corrected: ${laps > 0 ? '+' : ''}${lapsWords(laps)}`,
  'ruling.1': ({ words }) => `Ruling: ${words}`,
  'programmeMoved.1': ({ byMs }) => `Programme ${figure(byMs)} ${byMs < 0 ? 'earlier' : 'later'}`,
  'startDrawn.1': ({ lane }) =>
    lane === null ? 'We begin with a sit-out' : `We begin on lane ${lane}`,
  'laneDrawn.1': ({ lane }) => (lane === null ? 'Sit-out' : `Lane ${lane}`),
  'availability.1': ({ person, state }, nameOf) => `${nameOf(person)}: ${PRESENCE_WORD[state]}`,
  'measured.1': ({ quantity, valueMilli, unit }) => `${quantity} ${milliText(valueMilli)} ${unit}`,
  'energy.1': ({ what, lapsLeft, timeLeftMs }) =>
    what === 'filled' ? 'Energy filled' : `Energy: ${leftWords(lapsLeft, timeLeftMs)}`,
  'workTicked.1': ({ work, done }) => `${work}: ${done ? 'done' : 'not done'}`,
  'partFitted.1': ({ part }) => `Fitted: ${part}`,
  'incident.1': ({ what, where }) =>
    where === undefined ? INCIDENT_WORD[what] : `${INCIDENT_WORD[what]}, ${where}`,
  'faultNoted.1': ({ fault }) => `Fault: ${fault}`,
  'handover.1': ({ moves }, nameOf) => moves.map((move) => moveWords(move, nameOf)).join(', '),
  'dutyTaken.1': ({ person, duty }, nameOf) =>
    `${nameOf(person)}: ${DUTY_WORD[duty].toLowerCase()}`,
  'dutyLeft.1': ({ person }, nameOf) => `${nameOf(person)} left the duty`,
  'call.1': ({ person, words }, nameOf) => `To ${nameOf(person)}: ${words}`,
  'answer.1': ({ answer }) => `Call ${ANSWER_WORD[answer]}`,
  'stayOut.1': ({ byMs }) => `Stay out ${byMs / 60_000} min more`,
  'note.1': ({ words }) => `Note: ${words}`,
  'stopIn.1': ({ moment }) => (moment === 'stopped' ? 'Car in, stopped' : 'Car in, pit entry'),
}

function leftWords(laps: number | undefined, timeMs: number | undefined): string {
  const left = [
    ...(laps === undefined ? [] : [lapsWords(laps)]),
    ...(timeMs === undefined ? [] : [figure(timeMs)]),
  ]
  return `${left.join(', ')} left`
}

/** One short line; the parts a person recognises it by, never all of it. */
export function entryWords<K extends Kind>(entry: EntryOf<K>, nameOf: NameOf): string {
  return SPOKEN[entry.kind]?.(entry.body, nameOf) ?? PLAIN[entry.kind]
}
