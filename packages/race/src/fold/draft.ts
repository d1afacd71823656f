/** What the fold writes into: the state's rooms, open, with the indexes it needs while it runs. */
import type { ReadLog } from '../log/read-log.ts'
import type {
  Availability,
  CallState,
  CarState,
  ClockKnot,
  DocumentsState,
  DutySpan,
  FaultState,
  InterruptionSpan,
  PenaltyState,
  PeopleState,
  Problem,
  RaceControlState,
  RecordState,
  SegmentRun,
  StopState,
} from './state.ts'

type Open<T> = { -readonly [K in keyof T]: T[K] }
/** Rooms that are only lists: each open for appending. */
type Lists<T, K extends keyof T> = {
  readonly [P in K]: T[P] extends readonly (infer U)[] ? U[] : never
}

export type RunDraft = Omit<Open<SegmentRun>, 'knots'> & { readonly knots: ClockKnot[] }
export type InterruptionDraft = Open<InterruptionSpan>
export type PenaltyDraft = Open<PenaltyState>
export type SpanDraft = Open<DutySpan>
export type CallDraft = Open<CallState>
export type StopDraft = Omit<Open<StopState>, 'moments' | 'work'> & {
  readonly moments: Open<StopState['moments']>
  readonly work: StopState['work'][number][]
}
export type RepairDraft = Open<FaultState['repairs'][number]>
export type FaultDraft = Omit<Open<FaultState>, 'repairs'> & { readonly repairs: RepairDraft[] }

type RaceControlLists =
  | 'starts'
  | 'moves'
  | 'segmentChanges'
  | 'lapsCorrections'
  | 'rulings'
  | 'verdicts'
  | 'classifications'

export interface RaceControlDraft extends Lists<RaceControlState, RaceControlLists> {
  readonly runs: RunDraft[]
  readonly interruptions: InterruptionDraft[]
  readonly lanes: Map<string, number | null>
  readonly penalties: Map<string, PenaltyDraft>
  releasedAt: number | undefined
  /** The run that has no end yet, and the interruption that has none. */
  running: RunDraft | undefined
  interrupted: InterruptionDraft | undefined
}

export interface PeopleDraft extends Lists<PeopleState, 'inControl' | 'stayOuts'> {
  readonly duties: SpanDraft[]
  /** The open span of each person who has a duty. */
  readonly holding: Map<string, SpanDraft>
  readonly availability: Map<string, Availability>
  readonly calls: Map<string, CallDraft>
}

export interface CarDraft extends Lists<CarState, Exclude<keyof CarState, 'stops' | 'faults'>> {
  readonly stops: StopDraft[]
  readonly faults: Map<string, FaultDraft>
}

export interface Draft {
  readonly documents: DocumentsState
  /** Second witnesses, each with the entry that holds in its place. */
  readonly holders: ReadonlyMap<string, string>
  readonly raceControl: RaceControlDraft
  readonly people: PeopleDraft
  readonly car: CarDraft
  readonly record: Lists<RecordState, keyof RecordState>
  readonly problems: Problem[]
}

export function newDraft({ lines, documents, holders }: ReadLog, problems: Problem[]): Draft {
  return {
    documents,
    holders,
    raceControl: {
      runs: [],
      interruptions: [],
      starts: [],
      lanes: new Map(),
      moves: [],
      segmentChanges: [],
      penalties: new Map(),
      lapsCorrections: [],
      rulings: [],
      verdicts: [],
      classifications: [],
      releasedAt: undefined,
      running: undefined,
      interrupted: undefined,
    },
    people: {
      duties: [],
      holding: new Map(),
      availability: new Map(),
      calls: new Map(),
      inControl: [],
      stayOuts: [],
    },
    car: {
      stops: [],
      faults: new Map(),
      incidents: [],
      parts: [],
      exchanges: [],
      measurements: [],
      inspections: [],
      energy: [],
      work: [],
    },
    record: { notes: [], photographs: [], actions: [], advice: [], log: lines },
    problems,
  }
}
