export {
  ENVELOPE_VERSION,
  ROLES,
  bodyLimitBytes,
  entrySchema,
  recordedEntrySchema,
  roleSchema,
  timeMs,
  uuidV7,
  type Entry,
  type RecordedEntry,
  type Role,
} from './entry/envelope.ts'
export { DUTIES, type Duty, type Move } from './entry/scalars.ts'
export { isKnownKind, kinds, type Body, type Kind } from './entry/kinds/index.ts'
export { INCIDENTS } from './entry/kinds/car.ts'
export { DOCUMENTS, documentName, type DocumentName } from './entry/kinds/record.ts'
export {
  bodyProblem,
  isUnread,
  readEntry,
  type EntryOf,
  type LogEntry,
  type ReadEntry,
  type UnreadEntry,
} from './entry/read.ts'
export { documentSchemas, type DocumentContent } from './documents/index.ts'
export {
  regulationsSchema,
  type ProgrammeItem,
  type Regulations,
  type SegmentItem,
} from './documents/rules.ts'
export { crewSchema, type Crew, type CrewMember, type PersonWish } from './documents/crew.ts'
export { carSchema, type Car } from './documents/car.ts'
export {
  CALL_DEFAULTS,
  CAPTAINS_DEFAULTS,
  planSchema,
  type Plan,
  type PlanSpan,
  type PlanStop,
} from './documents/plan.ts'
export { NOT_KNOWN_YET, known, type NotKnownYet } from './rules/shape.ts'
export {
  ruleSchema,
  ruleValue,
  rulesOf,
  type Rule,
  type RuleKind,
  type RuleOf,
  type RuleValue,
} from './rules/index.ts'
export {
  ASSUMED_POLICY,
  CLOCKS,
  INTERRUPTIONS,
  type Clock,
  type ClockPolicy,
  type Interruption,
} from './rules/clocks.ts'
export type {
  Adoption,
  Availability,
  CallState,
  ClockKnot,
  DutySpan,
  FaultState,
  InterruptionSpan,
  LogLine,
  PenaltyState,
  Problem,
  Said,
  SegmentRun,
  State,
  StopMoment,
  StopState,
} from './fold/state.ts'
export { compareEntries } from './log/order.ts'
export { emptyState, fold } from './fold/fold.ts'
export { inForce } from './fold/in-force.ts'
export { moveLabel, personName, segmentName } from './fold/names.ts'
export { currentRun, segmentsOf, type SegmentOutlook, type SegmentPlace } from './time/programme.ts'
export { atOf, clockAt, type ClockReading } from './time/clock-map.ts'
export { planInForce } from './time/plan-in-force.ts'
export { policyFor, type PolicyFor } from './rules/policy-for.ts'
export { phaseOf, type Phase } from './clocks/phase.ts'
export { handsOnCar, type HandsOnCar } from './clocks/hands-on-car.ts'
export { segmentClock, type SegmentClock } from './clocks/segment-clock.ts'
export { stintClock, type StintClock } from './clocks/stint-clock.ts'
export {
  countedMoments,
  stopClock,
  type CountedMoments,
  type StopClock,
} from './clocks/stop-clock.ts'
export { stopsDone, type StopsDone, type StopWindow } from './clocks/stops-done.ts'
export { leavingNow, stopVerdict, type StopCost, type StopVerdict } from './clocks/stop-verdict.ts'
export { faultClocks, type FaultClocks } from './clocks/fault-clocks.ts'
export { compulsoryRepairs, type CompulsoryRepair } from './clocks/compulsory-repairs.ts'
export type { RepairLimit } from './clocks/repair-limits.ts'
export { allowances, type AllowanceNow } from './clocks/allowances.ts'
export { energyNow, type EnergyNow } from './clocks/energy.ts'
export { stayOut, type StayOut, type StayOutChoice } from './clocks/stay-out.ts'
export type { MovedSpan } from './clocks/whom-it-moves.ts'
export { THE_WALL, callsNow, type CallNow } from './clocks/calls-now.ts'
export {
  LANE_CHANGE_WORK,
  laneChange,
  type Countdown,
  type LaneChange,
  type SitOut,
} from './clocks/lane-change.ts'
export type { MoveStep } from './clocks/lane-change-moves.ts'
export { LIGHTS, lightTest, type LightTest } from './clocks/lights.ts'
export { runningTimes, type CarRunning, type PartRunning } from './clocks/running-time.ts'
export { darknessOf, type Darkness } from './time/darkness.ts'
export { lanesOf, type Lane, type SegmentLane } from './time/lanes.ts'
export { roundOf, type RoundPlace } from './time/lane-order.ts'
export { countsOf, type RunCounts } from './time/runs-that-count.ts'
export { hoursOfClock } from './time/hours-of-clock.ts'
export { awayNow } from './time/away.ts'
export { changesFor, type ChangeFor, type Seen } from './changes/changes-for.ts'
export { dutiesAhead, type DutyAhead } from './changes/duties-ahead.ts'
export { doubleBooked, type Apart, type DoubleBooked } from './timeline/double-booked.ts'
export type { Shortened } from './timeline/shortened.ts'
export { wishesOf, type WishFinding } from './checks/wishes.ts'
export { between, type Between, type BetweenWork } from './clocks/between.ts'
export { afterTheFlag, type AfterStep, type AfterTheFlag } from './clocks/after-the-flag.ts'
export { type Distance } from './standing/laps-and-sections.ts'
export { comparableAt, type Comparable } from './standing/comparable.ts'
export { pastedLines, type Pasted } from './standing/pasted.ts'
export { resultOf, type OfSegments, type Result, type ResultLine } from './standing/result.ts'
export type { ClassifiedLine, SegmentResult } from './standing/segment-results.ts'
export type { Tie, TieBreak } from './standing/ties.ts'
export {
  placesInWords,
  placesOf,
  type NotCounted,
  type WhyNotCounted,
} from './standing/places-lost.ts'
export { standing, type Rival, type Since, type Standing } from './standing/standing.ts'
export { summedStanding } from './standing/summed-standing.ts'
export { penalties, type PenaltyNow, type Protest, type ToServe } from './standing/penalties.ts'
export { dutiesNow, dutyOf, nextDutyOf, type NextDuty } from './clocks/duties.ts'
export { nextHandover, type NextHandover } from './clocks/next-handover.ts'
export { type Obligation, type ObligationKind } from './obligations/obligation.ts'
export { obligations } from './obligations/obligations.ts'
export { stopsDue } from './obligations/stops-due.ts'
export { ALERT_THRESHOLDS_MS, alertsBetween, type Alert } from './obligations/alerts.ts'
export { may, mayRecord, type Action } from './access/may.ts'
export {
  continuedTimeline,
  planTimeline,
  raceTimeline,
  type Timeline,
  type TimelineSpan,
} from './timeline/timeline.ts'
export type { TimelineSegment } from './timeline/segments.ts'
export type { TimelineStop } from './timeline/stops.ts'
export { withDrafts, type Drafts } from './timeline/with-drafts.ts'
export { countInWords, durationInWords } from './checks/in-words.ts'
export { findings, type Finding } from './checks/findings.ts'
export { judge } from './checks/judge.ts'
export { CHECKS } from './checks/index.ts'
export type { Judged } from './checks/bench.ts'
export { RULE_KINDS } from './rules/kinds/index.ts'
export type { Part } from './rules/parts.ts'
export { SENTENCES } from './sentences/index.ts'
export { GROUPS, type Group, type Sentence } from './sentences/sentence.ts'
export { contradictions, type Contradiction } from './contradictions/index.ts'
export {
  optionalParts,
  saidTokens,
  type OptionalToken,
  type PartToken,
  type Token,
  type WordsToken,
} from './sentences/tokens.ts'
export {
  choiceWords,
  partsOf,
  sentenceOf,
  valueInWords,
  type SentenceNames,
} from './sentences/in-words.ts'
export { counted, plural, withNumber } from './sentences/plural.ts'
export { briefingQuestions } from './sentences/questions.ts'
export { STARTING_POINTS } from './starting-points/index.ts'
export type { StartingPoint } from './starting-points/starting-point.ts'
