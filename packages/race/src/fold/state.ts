/**
 * What a log says happened. Plain JSON, one room a family of kinds, made only by `fold`.
 * Times named `…At` are meeting time; `…ClockMs` are a segment's race clock.
 */
import type { Role } from '../entry/envelope.ts'
import type { Body } from '../entry/kinds/index.ts'
import type { DocumentName } from '../entry/kinds/record.ts'
import type { LogEntry, ReadEntry } from '../entry/read.ts'
import type { Duty } from '../entry/scalars.ts'
import type { DocumentContent } from '../documents/index.ts'
import type { SegmentLength } from '../documents/rules.ts'
import type { Clock, ClockPolicy, Interruption } from '../rules/clocks.ts'

export interface State {
  readonly documents: DocumentsState
  readonly raceControl: RaceControlState
  readonly people: PeopleState
  readonly car: CarState
  readonly record: RecordState
  /** What does not add up, each with the entries that cause it. Nothing is refused for it. */
  readonly problems: readonly Problem[]
}

/** One version of a document, and from when it holds. Log order; the last that applies at an instant is in force. */
export interface Adoption<D extends DocumentName = DocumentName> {
  readonly entry: string
  readonly version: number
  readonly appliesFrom: number
  readonly content: DocumentContent<D>
}
export type DocumentsState = { readonly [D in DocumentName]: readonly Adoption<D>[] }

export interface RaceControlState {
  /** Every running of every segment, in the order of their greens. */
  readonly runs: readonly SegmentRun[]
  readonly interruptions: readonly InterruptionSpan[]
  /** Starting lanes as they were drawn; of two from one segment on the later counts. */
  readonly starts: readonly Said<'startDrawn.1'>[]
  /** Lanes drawn for one segment after the start that speaks for it. */
  readonly lanes: Readonly<Record<string, number | null>>
  readonly moves: readonly Said<'programmeMoved.1'>[]
  readonly segmentChanges: readonly Said<'segmentChanged.1'>[]
  readonly penalties: readonly PenaltyState[]
  readonly lapsCorrections: readonly Said<'lapsCorrected.1'>[]
  readonly rulings: readonly Said<'ruling.1'>[]
  readonly verdicts: readonly Said<'scrutineering.1'>[]
  readonly classifications: readonly Said<'classification.1'>[]
  readonly releasedAt?: number
}

/** A fact kept as it was said. */
export interface Said<K extends ReadEntry['kind']> {
  readonly entry: string
  readonly at: number
  readonly body: Body<K>
}

/** One running of a segment. `knots` is its clock map: rising in `at`, never empty. */
export interface SegmentRun {
  readonly entry: string
  readonly segment: string
  readonly length: SegmentLength
  readonly greenAt: number
  readonly endAt?: number
  readonly endEntry?: string
  readonly abandoned?: true
  readonly knots: readonly ClockKnot[]
  /** When the hall's clock was last read for it. */
  readonly clockReadAt?: number
}

/** From `at` on the race clock goes on from `clockMs` at `rate`, known to within ± `boundMs`. */
export interface ClockKnot {
  readonly at: number
  readonly clockMs: number
  readonly rate: 0 | 1
  readonly boundMs: number
}

export interface InterruptionSpan {
  readonly entry: string
  readonly cause: Extract<Interruption, 'trackCall' | 'redFlag'>
  readonly fromAt: number
  readonly toAt?: number
  /** What each clock did, by the rules in force when it began. */
  readonly policy: Readonly<Record<Clock, ClockPolicy>>
}

export interface PenaltyState extends Said<'penalty.1'> {
  readonly servedAt?: number
  readonly withdrawnAt?: number
}

export interface PeopleState {
  /** Who had which duty, from when until when, in order of beginning. Open while `toAt` is absent. */
  readonly duties: readonly DutySpan[]
  readonly availability: Readonly<Record<string, Availability>>
  readonly calls: readonly CallState[]
  /** Who answers for a car that is not running, as it was said. */
  readonly inControl: readonly Said<'inControl.1'>[]
  /** By how much handovers of the plan come later, as it was said. */
  readonly stayOuts: readonly Said<'stayOut.1'>[]
}

export interface DutySpan {
  readonly entry: string
  readonly person: string
  readonly duty: Duty
  readonly post?: string
  readonly lane?: number
  readonly fromAt: number
  readonly toAt?: number
  /** Nobody said so: taken from the plan when its segment went green. */
  readonly assumed?: true
}

export interface Availability {
  readonly entry: string
  readonly at: number
  readonly state: Body<'availability.1'>['state']
  readonly until?: number
}

export interface CallState extends Said<'call.1'> {
  /** Who called: the person, or the device where nobody says who holds it. */
  readonly by: string
  readonly answer?: {
    readonly entry: string
    readonly at: number
    readonly answer: Body<'answer.1'>['answer']
  }
}

export interface CarState {
  readonly stops: readonly StopState[]
  readonly incidents: readonly Said<'incident.1'>[]
  readonly faults: readonly FaultState[]
  readonly parts: readonly PartState[]
  readonly exchanges: readonly Said<'carExchanged.1'>[]
  readonly measurements: readonly Said<'measured.1'>[]
  readonly inspections: readonly Said<'inspected.1'>[]
  readonly energy: readonly Said<'energy.1'>[]
  readonly work: readonly Said<'workTicked.1'>[]
}

export interface PartState extends Said<'partFitted.1' | 'partRemoved.1'> {
  readonly was: 'fitted' | 'removed'
}

export type StopMoment = 'pitEntry' | 'stopped' | 'leaving' | 'pitExit'

/** One visit. `entry` is the first moment's. A stop with neither leaving nor exit is still going on. */
export interface StopState {
  readonly entry: string
  /** The segment that was running, where one was. */
  readonly segment?: string
  readonly planned?: string
  readonly moments: { readonly [M in StopMoment]?: { readonly entry: string; readonly at: number } }
  readonly work: NonNullable<Body<'stopOut.1'>['work']>
}

export interface FaultState {
  readonly entry: string
  readonly fault: string
  readonly notedAt: number
  readonly causedBy?: Body<'faultNoted.1'>['causedBy']
  /** Goes at the repair, in order; the last is open while `toAt` is absent. */
  readonly repairs: readonly { readonly fromAt: number; readonly toAt?: number }[]
  readonly ended?: { readonly how: 'mended' | 'left'; readonly at: number; readonly entry: string }
}

export interface RecordState {
  readonly notes: readonly Said<'note.1'>[]
  readonly photographs: readonly Said<'photograph.1'>[]
  readonly actions: readonly Said<'action.1'>[]
  readonly advice: readonly Said<'advised.1'>[]
  /** Every entry in the order the fold read them, and what became of it. */
  readonly log: readonly LogLine[]
}

export interface LogLine {
  /** As it was recorded. */
  readonly entry: LogEntry
  /** As it holds, where a correction put in another body. */
  readonly corrected?: ReadEntry
  /** When it counts: corrected, or pulled back to when the server took it. */
  readonly at: number
  readonly standing: 'holds' | 'corrected' | 'voided' | 'secondWitness' | 'unread' | 'correction'
  /** The correction a further one must be based on; the entry itself while there is none. */
  readonly basedOn: string
  readonly reason?: string
  /** The press this one bears witness to. */
  readonly witnessOf?: string
  readonly role?: Role
}

export interface Problem {
  readonly kind:
    | 'alreadySo'
    | 'outOfPlace'
    | 'correctionClash'
    | 'correctionAstray'
    | 'adoptionClash'
    | 'numbersMissing'
    | 'timeInDoubt'
    | 'unread'
  readonly entries: readonly string[]
  readonly sentence: string
}
