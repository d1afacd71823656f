/** What comes of working a rotation out. */
import type { Solved } from '../linear/solve.ts'
import type { Fault } from '../problem/faults.ts'
import type { Rotation } from '../rotation/rotation.ts'
import { expected, type Expected } from './expected.ts'
import { read, type Sheet } from './read.ts'

export type Answer = Planned | Impossible | Faulty | Stopped

export interface Planned extends Sheet {
  readonly kind: 'planned'
  readonly expected: Expected
  /** What was made as large as can be: laps less the price of unequal shares, wishes missed and changes. */
  readonly worthLaps: number
  /** No rotation is worth more than this. */
  readonly boundLaps: number
  readonly gapLaps: number
  readonly proof: Proof
}

/**
 * `best`: no rotation is worth more. `bestOnGrid`: none whose stops lie at the moments that were looked at. `within`:
 * nothing but the gap is known.
 */
export type Proof = 'best' | 'bestOnGrid' | 'within'

/** No rotation keeps all rules and pins: `explain` says why. */
export interface Impossible {
  readonly kind: 'impossible'
}

export interface Faulty {
  readonly kind: 'faulty'
  readonly faults: readonly Fault[]
}

/** Ended by a limit, a cancel or for want of memory before there was any. */
export interface Stopped {
  readonly kind: 'stopped'
}

export function answerOf(rotation: Rotation, solved: Solved): Answer {
  if (solved.status === 'infeasible') return { kind: 'impossible' }
  if (!solved.values) return { kind: 'stopped' }
  const { problem, slots } = rotation.grid
  const sheet = read(rotation, solved.values)
  const isOnGrid = slots.some(({ begins, isPast }) => begins === 'mayStop' && !isPast)
  const isProved = solved.status === 'optimal'
  return {
    kind: 'planned',
    ...sheet,
    expected: expected(problem, sheet),
    worthLaps: solved.objective,
    boundLaps: solved.bound,
    gapLaps: Math.max(0, solved.bound - solved.objective),
    proof: !isProved ? 'within' : isOnGrid ? 'bestOnGrid' : 'best',
  }
}
