/** Which kinds state how something is, in which channel, and when two of them state the same. */
import type { Body, Kind } from '../entry/kinds/index.ts'
import type { Move } from '../entry/scalars.ts'

interface StatementOf<K extends Kind> {
  /** Statements of one channel follow each other; a new one replaces the last. */
  readonly channel: (body: Body<K>) => string
  readonly same: (a: Body<K>, b: Body<K>) => boolean
}
export type Statement = StatementOf<Kind>

const always = () => true

const raceControl = () => 'race control'
const duties = () => 'duties'
const ofFault = (body: { readonly fault: string }) => body.fault
const ofPenalty = (body: { readonly penalty: string }) => body.penalty
const sameSegment = (a: { readonly segment: string }, b: { readonly segment: string }) =>
  a.segment === b.segment

/** Observations that may truly come twice (an incident, a note, a reading) are not in the list. */
const STATEMENTS: { readonly [K in Kind]?: StatementOf<K> } = {
  'green.1': { channel: raceControl, same: sameSegment },
  'trackCall.1': { channel: raceControl, same: always },
  'powerOn.1': { channel: raceControl, same: always },
  'redFlag.1': { channel: raceControl, same: always },
  'segmentEnd.1': { channel: raceControl, same: sameSegment },
  'segmentChanged.1': {
    channel: (body) => `change of ${body.segment}`,
    same: ({ change: a }, { change: b }) =>
      a.what === 'length' ? b.what === 'length' && a.lengthMs === b.lengthMs : a.what === b.what,
  },
  'programmeMoved.1': {
    channel: () => 'programme',
    same: (a, b) => a.fromItem === b.fromItem && a.byMs === b.byMs,
  },
  'startDrawn.1': {
    channel: (body) => `start from ${body.segment ?? ''}`,
    same: (a, b) => a.lane === b.lane && a.sitOut === b.sitOut && a.group === b.group,
  },
  'laneDrawn.1': {
    channel: (body) => `lane of ${body.segment}`,
    same: (a, b) => a.lane === b.lane,
  },
  'penalty.1': {
    channel: () => 'penalty',
    same: (a, b) =>
      a.what === b.what && a.laps === b.laps && a.heldMs === b.heldMs && a.scope === b.scope,
  },
  'penaltyServed.1': { channel: ofPenalty, same: always },
  'penaltyWithdrawn.1': { channel: ofPenalty, same: always },
  'lapsCorrected.1': {
    channel: () => 'laps',
    same: (a, b) => a.laps === b.laps && a.sections === b.sections,
  },
  'scrutineering.1': {
    channel: () => 'scrutineering',
    same: (a, b) => a.when === b.when && a.verdict === b.verdict,
  },
  'released.1': { channel: () => 'released', same: always },
  'handover.1': { channel: duties, same: (a, b) => sameMoves(a.moves, b.moves) },
  'dutyTaken.1': {
    channel: duties,
    same: (a, b) => a.person === b.person && a.duty === b.duty && a.post === b.post,
  },
  'dutyLeft.1': { channel: duties, same: (a, b) => a.person === b.person },
  'inControl.1': { channel: () => 'in control', same: (a, b) => a.person === b.person },
  'availability.1': {
    channel: (body) => `availability of ${body.person}`,
    same: (a, b) => a.state === b.state && a.until === b.until,
  },
  'answer.1': { channel: (body) => body.call, same: (a, b) => a.answer === b.answer },
  'stayOut.1': {
    channel: (body) => `handover at ${body.boundaryMs} of ${body.segment}`,
    same: (a, b) => a.byMs === b.byMs,
  },
  'stopIn.1': { channel: (body) => body.moment, same: always },
  'stopOut.1': {
    channel: (body) => body.moment,
    same: (a, b) => sameMoves(a.moves ?? [], b.moves ?? []),
  },
  'faultNoted.1': { channel: (body) => `fault ${body.fault}`, same: always },
  'repairStarted.1': { channel: ofFault, same: always },
  'repairPaused.1': { channel: ofFault, same: always },
  'repairFinished.1': { channel: ofFault, same: always },
  'faultLeft.1': { channel: ofFault, same: always },
  'partFitted.1': {
    channel: (body) => `part ${body.position}`,
    same: (a, b) => a.part === b.part,
  },
  'partRemoved.1': {
    channel: (body) => `part ${body.position}`,
    same: (a, b) => a.part === b.part,
  },
  'carExchanged.1': { channel: () => 'car', same: (a, b) => a.car === b.car },
}

const BY_KIND: ReadonlyMap<Kind, Statement> = new Map(
  Object.entries(STATEMENTS).map(([kind, statement]) => [kind as Kind, statement as Statement]),
)

/** Undefined for kinds that state nothing: most entries, so it is asked of a map, which is quick to say no. */
export function statementOf(kind: Kind): Statement | undefined {
  return BY_KIND.get(kind)
}

function sameMoves(a: readonly Move[], b: readonly Move[]): boolean {
  return a.length === b.length && a.every((move, i) => sameMove(move, b[i]))
}

function sameMove(a: Move, b: Move | undefined): boolean {
  return a.person === b?.person && a.duty === b.duty && a.post === b.post && a.lane === b.lane
}
