export type { Answer, Faulty, Impossible, Planned, Proof, Stopped } from './answer/answer.ts'
export { compare } from './answer/compare.ts'
export type { Comparison, Side } from './answer/compare.ts'
export { expected } from './answer/expected.ts'
export type { DriverWorth, Expected } from './answer/expected.ts'
export type { Sheet, Stop } from './answer/read.ts'
export { explain } from './explain.ts'
export type { Collision, Possible, Why } from './explain.ts'
export type { Progress, SolveOptions } from './linear/solve.ts'
export { plan } from './plan.ts'
export { faultsOf } from './problem/faults.ts'
export type { Fault } from './problem/faults.ts'
export type { Pace, Person } from './problem/person.ts'
export type {
  Balance,
  Counting,
  Duty,
  Pin,
  Previous,
  Problem,
  Span,
  StopLength,
} from './problem/problem.ts'
export type { GivenStop, Past, Segment } from './problem/segment.ts'
export { changedSpans, replan } from './replan.ts'
export type { Replanned } from './replan.ts'
export type { Rule } from './rules/index.ts'
export type { Wish } from './wishes/index.ts'
export { costOf, without } from './without.ts'
export type { Costs } from './without.ts'
