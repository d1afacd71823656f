import { known } from '../../rules/shape.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'

/**
 * Changes within a segment; between two the car stands anyway. A planned stop lasts its minimum, one that was
 * made until the car went out. The order of who goes first is a matter of every handover: see `always/`.
 */
export const driverChange: Check<'driverChange'> = {
  axis: 'meeting',
  limits: ({ where }, bench) => {
    if (known(where) !== 'stoppedInPitLane') return []
    const cases = changesOf(bench).map((change) => {
      const nearest = nearestOf(bench.stopsIn(change.after.segment), change, bench.stopMinimumMs)
      return caseOf(change, nearest, bench)
    })
    return [{ name: 'where', called: 'Changes at a stop', cases }]
  },
}

interface Change {
  readonly before: TimelineSpan
  readonly after: TimelineSpan
}

function changesOf({ timeline }: Bench): readonly Change[] {
  const last = new Map<string, TimelineSpan>()
  const changes: Change[] = []
  for (const after of timeline.spans) {
    if (after.duty !== 'controller') continue
    const before = last.get(after.segment)
    if (before && before.person !== after.person) changes.push({ before, after })
    last.set(after.segment, after)
  }
  return changes
}

interface Nearest {
  readonly stop: TimelineStop
  /** How far the change reaches out of it. */
  readonly off: number
}

function nearestOf(
  stops: readonly TimelineStop[],
  change: Change,
  minimumMs: number,
): Nearest | undefined {
  let nearest: Nearest | undefined
  for (const stop of stops) {
    const off = offBy(change, stop, minimumMs)
    if (nearest === undefined || off < nearest.off) nearest = { stop, off }
  }
  return nearest
}

function caseOf({ before, after }: Change, nearest: Nearest | undefined, bench: Bench): Case {
  const names = () =>
    `${bench.nameOf(before.person)} hands over to ${bench.nameOf(after.person)} at ${placeInWords(bench, { segment: after.segment, clockMs: after.fromMs })}`
  const about = {
    at: after.fromAt,
    people: [before.person, after.person],
    spans: [before.id, after.id],
  }
  if (!nearest) {
    return {
      sense: 'atLeast',
      unit: 'count',
      limit: 1,
      value: 0,
      ...about,
      says: () => `${names()}, which has no stop.`,
    }
  }
  const { stop, off } = nearest
  return {
    sense: 'atMost',
    unit: 'ms',
    limit: 0,
    value: off,
    stops: [stop.id],
    ...about,
    says: () =>
      `${names()}, ${off === 0 ? 'during a stop' : `${durationInWords(off)} away from the nearest stop`}.`,
  }
}

/** How far a change reaches out of a stop, 0 where it lies inside. */
function offBy({ before, after }: Change, stop: TimelineStop, minimumMs: number): number {
  const fromAt = Math.min(before.toAt, after.fromAt)
  const toAt = Math.max(before.toAt, after.fromAt)
  const early = stop.at - fromAt
  if (stop.done && stop.outAt === undefined) return Math.max(0, early)
  return Math.max(0, early, toAt - (stop.outAt ?? stop.at + minimumMs))
}
