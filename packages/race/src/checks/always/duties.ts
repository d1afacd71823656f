/** Duties as what always holds says them. */
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench } from '../bench.ts'
import { durationInWords } from '../in-words.ts'

/** What somebody does: `drives`, `is at post 4`. */
export function doesInWords({ duty, post }: Pick<TimelineSpan, 'duty' | 'post'>): string {
  switch (duty) {
    case 'controller':
      return 'drives'
    case 'post':
      return post === undefined ? 'is at a post' : `is at post ${post}`
    case 'wall':
      return 'is at the wall'
    case 'bench':
      return 'is at the bench'
    case 'offDuty':
      return 'is off duty'
  }
}

/** `from 0:20 to 0:30 of segment 1`, on the race clock. */
export function stretchInWords({ segmentName }: Bench, span: OnClock): string {
  const { segment, fromMs, toMs } = span
  return `from ${durationInWords(fromMs)} to ${durationInWords(toMs)} of ${segmentName(segment)}`
}

type OnClock = Pick<TimelineSpan, 'segment' | 'fromMs' | 'toMs'>

interface Overlap extends OnClock {
  readonly one: TimelineSpan
  readonly other: TimelineSpan
  readonly fromAt: number
  readonly overlapMs: number
}

/**
 * Pairs of spans, which come in order of beginning, that share some meeting time of one segment. Those of two
 * segments never do: about when the next one begins is not known while the one before is counted in laps.
 */
export function overlapsOf(spans: readonly TimelineSpan[]): readonly Overlap[] {
  const found: Overlap[] = []
  let open: readonly TimelineSpan[] = []
  for (const other of spans) {
    if (other.toAt <= other.fromAt) continue
    open = open.filter(({ toAt }) => toAt > other.fromAt)
    for (const one of open) {
      if (one.segment !== other.segment) continue
      const overlapMs = Math.min(one.toAt, other.toAt) - other.fromAt
      const clock = { fromMs: other.fromMs, toMs: Math.min(one.toMs, other.toMs) }
      found.push({ one, other, overlapMs, fromAt: other.fromAt, segment: one.segment, ...clock })
    }
    open = [...open, other]
  }
  return found
}
