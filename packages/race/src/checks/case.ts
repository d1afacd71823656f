/** What one check finds, before it is decided which of it is worth saying. */
import type { RuleKind, RuleValue } from '../rules/index.ts'
import type { Bench } from './bench.ts'

/**
 * One comparison of a limit with a value. Whole numbers: milliseconds, thousandths, or a count.
 *
 * A plan has thousands of them: write properties first and spreads after. A literal that begins with a spread and
 * then adds to it takes a hundred times as long to build (5 µs against 60 ns, measured in V8 11.3).
 */
export interface Case {
  readonly sense: 'atLeast' | 'atMost'
  readonly unit: 'ms' | 'perMille' | 'count'
  readonly limit: number
  readonly value: number
  /**
   * Meeting time at which it is decided, so that only the rules in force then judge it; left out where it
   * concerns the race as a whole.
   */
  readonly at?: number
  readonly people?: readonly string[]
  readonly spans?: readonly string[]
  readonly stops?: readonly string[]
  /** It can still be made good while the timeline does not reach to the end. */
  readonly untilTheEnd?: true
  /** A plain sentence, without its clause. Called only where it is said. */
  readonly says: () => string
}

/** Cases of one limit are held against each other: the closest of them is said where none is broken. */
export interface Limit {
  /** Names it within its rule: `atLeast`, `atMost` … */
  readonly name: string
  /** As a row of a table reads it: `Each drives at least`. */
  readonly called: string
  readonly cases: readonly Case[]
}

/** Which time a check goes by: a segment's race clock, meeting time, or none. */
export type Axis = 'race' | 'meeting' | 'none'

export interface Check<K extends RuleKind = RuleKind> {
  readonly axis: Axis
  /** Nothing for a part that is not known yet or absent. */
  limits(value: RuleValue<K>, bench: Bench): readonly Limit[]
}

/** A kind of rule that is written down and shown, but that a timeline cannot be held against. */
export interface NotChecked {
  readonly notChecked: string
}

/** What holds without any rule: nobody is in two places. */
export interface AlwaysCheck {
  readonly called: string
  readonly axis: Axis
  readonly limits: (bench: Bench) => readonly Limit[]
}
