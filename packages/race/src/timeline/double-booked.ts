/** Two meetings at one event: who is asked to be in two places. */
import type { Timeline, TimelineSpan } from './timeline.ts'

export interface DoubleBooked {
  readonly person: string
  /** The duty in the first meeting and the one in the other, and the meeting time both claim. */
  readonly one: TimelineSpan
  readonly other: TimelineSpan
  readonly fromAt: number
  readonly toAt: number
}

export interface Apart {
  /** Time it takes from one to the other: duties closer together than this claim it both. */
  readonly atLeastMs?: number
}

/**
 * Every pair of duties of one person in both timelines that share some meeting time, soonest first; off duty is none.
 * A person's id is the same in every meeting, and meeting time in all meetings of a server.
 */
export function doubleBooked(
  first: Timeline,
  second: Timeline,
  { atLeastMs = 0 }: Apart = {},
): readonly DoubleBooked[] {
  const duties = second.spans.filter(({ duty }) => duty !== 'offDuty')
  return first.spans
    .flatMap((one): readonly DoubleBooked[] => {
      if (one.duty === 'offDuty') return []
      const clashes = duties.filter(
        (other) =>
          other.person === one.person &&
          other.fromAt < one.toAt + atLeastMs &&
          one.fromAt < other.toAt + atLeastMs,
      )
      return clashes.map((other) => {
        const [fromAt, toAt] = [Math.max(one.fromAt, other.fromAt), Math.min(one.toAt, other.toAt)]
        // Apart, but not far enough: what lies between them.
        const times = { fromAt: Math.min(fromAt, toAt), toAt: Math.max(fromAt, toAt) }
        return { person: one.person, one, other, ...times }
      })
    })
    .sort((a, b) => a.fromAt - b.fromAt || a.toAt - b.toAt)
}
