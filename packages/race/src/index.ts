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
  readEntry,
  type EntryOf,
  type LogEntry,
  type ReadEntry,
  type UnreadEntry,
} from './entry/read.ts'
export { documentSchemas, type DocumentContent } from './documents/index.ts'
export { regulationsSchema, type ProgrammeItem, type Regulations, type SegmentItem } from './documents/rules.ts'
export { crewSchema, type Crew, type CrewMember } from './documents/crew.ts'
export { carSchema, type Car } from './documents/car.ts'
export { CAPTAINS_DEFAULTS, planSchema, type Plan, type PlanSpan, type PlanStop } from './documents/plan.ts'
export { NOT_KNOWN_YET, known, type NotKnownYet } from './rules/shape.ts'
export { ruleSchema, ruleValue, rulesOf, type Rule, type RuleKind, type RuleOf, type RuleValue } from './rules/index.ts'
export { ASSUMED_POLICY, CLOCKS, INTERRUPTIONS, type Clock, type ClockPolicy, type Interruption } from './rules/clock-policy.ts'
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
