/** What an entry says beyond its few words: the rest of its body, in plain words. One function a kind. */
import { counted, type Body, type Kind, type ReadEntry } from '@pitlamp/race'
import { moveWords } from '../../parts/moves.ts'
import { figure } from '../../parts/time.ts'

export interface Names {
  readonly nameOf: (person: string) => string
  readonly segmentOf: (segment: string) => string
  readonly timeOf: (at: number) => string
  /** The few words of another entry, and when it was. */
  readonly entryOf: (entry: string) => string
}

type Say = string | false | undefined
type Details = { readonly [K in Kind]: (body: Body<K>, names: Names) => readonly Say[] }

const nothing = (): readonly Say[] => []
const words = (body: { readonly words?: string }): readonly Say[] => [body.words]
const ofSegment = (body: { readonly segment: string }, { segmentOf }: Names) => [
  segmentOf(body.segment),
]
const ofFault = (body: { readonly fault: string; readonly words?: string }, names: Names) => [
  names.entryOf(body.fault),
  body.words,
]
const ofPart = (body: { readonly position: string; readonly part: string }) => [
  body.position,
  body.part,
]

const DETAILS: Details = {
  'green.1': ofSegment,
  'trackCall.1': nothing,
  'powerOn.1': nothing,
  'redFlag.1': nothing,
  'segmentEnd.1': ofSegment,
  'segmentChanged.1': ({ segment, change }, { segmentOf }) => [
    segmentOf(segment),
    change.what === 'length' && `lasts ${figure(change.lengthMs)}`,
    change.what === 'abandoned' && 'abandoned',
    change.what === 'runAgain' && 'to be run again',
  ],
  'clockRead.1': ({ segment, shows, readingMs }, { segmentOf }) => [
    segmentOf(segment),
    `the hall’s clock shows ${figure(readingMs)} ${shows === 'toGo' ? 'to go' : 'gone'}`,
  ],
  'programmeMoved.1': nothing,
  'startDrawn.1': ({ segment, group }, { segmentOf }) => [
    segment !== undefined && `from ${segmentOf(segment)} on`,
    group !== undefined && `group ${group}`,
  ],
  'laneDrawn.1': ofSegment,
  'penalty.1': ({ scope, words }) => [SCOPE_WORDS[scope], words],
  'penaltyServed.1': ({ penalty }, { entryOf }) => [entryOf(penalty)],
  'penaltyWithdrawn.1': ({ penalty, words }, { entryOf }) => [entryOf(penalty), words],
  'lapsCorrected.1': words,
  'ruling.1': nothing,
  'scrutineering.1': words,
  'released.1': nothing,
  'classification.1': ({ standing, lines }) => [standing, counted(lines.length, 'line')],
  'handover.1': nothing,
  'inControl.1': ({ person }, { nameOf }) => [nameOf(person)],
  'dutyTaken.1': ({ post }) => [post !== undefined && `post ${post}`],
  'dutyLeft.1': nothing,
  'availability.1': ({ until }, { timeOf }) => [until !== undefined && `until ${timeOf(until)}`],
  'call.1': ({ dueAt }, { timeOf }) => [dueAt !== undefined && `at ${timeOf(dueAt)}`],
  'answer.1': ({ call }, { entryOf }) => [entryOf(call)],
  'stayOut.1': ({ segment, boundaryMs }, { segmentOf }) => [
    segmentOf(segment),
    `the change at ${figure(boundaryMs)}`,
  ],
  'stopIn.1': nothing,
  'stopOut.1': ({ moment, work = [], moves = [] }, { nameOf }) => [
    moment === 'leaving' ? 'wheels turning' : 'pit exit',
    ...work.map(({ what, done }) => (done ? what : `${what} left`)),
    ...moves.map((move) => moveWords(move, nameOf)),
  ],
  'incident.1': words,
  'faultNoted.1': words,
  'repairStarted.1': ofFault,
  'repairPaused.1': ofFault,
  'repairFinished.1': ofFault,
  'faultLeft.1': ofFault,
  'partFitted.1': ({ position }) => [position],
  'partRemoved.1': ofPart,
  'carExchanged.1': ({ car }) => [car],
  'measured.1': nothing,
  'inspected.1': ({ what, inOrder, words }) => [what, inOrder ? 'in order' : 'not in order', words],
  'energy.1': ({ what, lapsLeft, timeLeftMs }) =>
    what === 'read'
      ? []
      : [
          lapsLeft !== undefined && `${counted(lapsLeft, 'lap')} left`,
          timeLeftMs !== undefined && `${figure(timeLeftMs)} left`,
        ],
  'workTicked.1': nothing,
  'adopted.1': ({ document, version, as }) => [
    document,
    `version ${version}`,
    as === 'correction' ? 'holds from the start' : 'holds from then on',
  ],
  'advised.1': ({ about, advice }) => [about, advice],
  'note.1': nothing,
  'photograph.1': words,
  'action.1': words,
  'correction.1': ({ target, change, reason }, names) => [
    names.entryOf(target),
    correctionWords(change, names.timeOf),
    reason,
  ],
}

const SCOPE_WORDS: Readonly<Record<Body<'penalty.1'>['scope'], string>> = {
  segment: 'counts in the segment',
  stage: 'counts in the stage',
  race: 'counts in the race',
}

/** Empty where the few words say it all. */
export function detailsOf(entry: ReadEntry, names: Names): string {
  const details = DETAILS[entry.kind] as (body: unknown, names: Names) => readonly Say[]
  return details(entry.body, names).filter(Boolean).join(' · ')
}

function correctionWords(
  change: Body<'correction.1'>['change'],
  timeOf: (at: number) => string,
): string {
  if (change.what === 'void') return 'made void'
  if (change.apart === true) return 'split off again'
  if (change.at !== undefined) return `moved to ${timeOf(change.at)}`
  return change.body === undefined ? 'restored' : 'set right'
}
