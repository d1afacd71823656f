/** Two rotations against each other: whether their laps differ by more than the paces are known to. */
import { FOUR_FIFTHS, type Expected } from './expected.ts'
import type { Person } from '../problem/person.ts'
import type { Problem, Span } from '../problem/problem.ts'

export interface Comparison {
  /** Laps the first is ahead by. */
  readonly laps: number
  /** It lies between these four times out of five. */
  readonly fromLaps: number
  readonly toLaps: number
  /** Both signs are possible. */
  readonly noRealDifference: boolean
  /** Whose largest and smallest share lie closer together; undefined where neither's do. */
  readonly fairer?: 'first' | 'second'
}

export interface Side {
  readonly expected: Expected
  readonly spans: readonly Span[]
}

/**
 * A driver's pace is the same in both, so that only the time they drive more in one than in the other is in doubt.
 * Where there is no real difference, the fairer one is to be proposed.
 */
export function compare({ people }: Problem, first: Side, second: Side): Comparison {
  const laps = first.expected.laps - second.expected.laps
  const spread = FOUR_FIFTHS * spreadOf(people, first.expected, second.expected)
  const [one, other] = [unevenMs(people, first.spans), unevenMs(people, second.spans)]
  return {
    laps,
    fromLaps: laps - spread,
    toLaps: laps + spread,
    noRealDifference: Math.abs(laps) <= spread,
    ...(one === other ? {} : { fairer: one < other ? 'first' : 'second' }),
  }
}

function spreadOf(people: readonly Person[], first: Expected, second: Expected): number {
  const squares = people.map(({ id, pace }) => {
    const [one, other] = [first, second].map(
      ({ each }) => each.find(({ person }) => person === id)?.lapsPerMs ?? 0,
    )
    const off = ((one ?? 0) - (other ?? 0)) * (pace?.knownToMs ?? 0)
    return off * off
  })
  return Math.sqrt(squares.reduce((sum, one) => sum + one, 0))
}

/** The longest driving time less the shortest, of all who can drive and have a share. */
function unevenMs(people: readonly Person[], spans: readonly Span[]): number {
  const times = people
    .filter(({ duties, share = 1 }) => duties.includes('controller') && share > 0)
    .map(({ id }) =>
      spans
        .filter(({ person, duty }) => person === id && duty === 'controller')
        .reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0),
    )
  return times.length === 0 ? 0 : Math.max(...times) - Math.min(...times)
}
