/**
 * The plan as one printed page that still serves when every screen is dead: a line for every moment at which
 * something changes, with room to write down when it really did.
 */
import type { Crew, Timeline, TimelineSegment, TimelineSpan } from '@pitlamp/race'

export interface SheetLine {
  readonly id: string
  readonly at: number
  readonly clockMs: number
  readonly kind: 'green' | 'change' | 'stop' | 'end'
  /** Who drives from here on; empty where nobody does. */
  readonly driver: string
  readonly marshals: string
  readonly others: string
  /** `Green`, `Mandatory stop: rear tyres`, `Segment over`. */
  readonly what: string
}

export interface SheetPart {
  readonly segment: TimelineSegment
  readonly lines: readonly SheetLine[]
}

/** One part a segment, its lines in order: green, every change, every stop, the end. */
export function runningSheet(timeline: Timeline, crew: Crew): readonly SheetPart[] {
  return timeline.segments.map((segment) => ({ segment, lines: linesOf(timeline, crew, segment) }))
}

/** Lines of all parts, headings included: what has to go on the page. */
export function lineCount(parts: readonly SheetPart[]): number {
  return parts.reduce((sum, { lines }) => sum + lines.length + 1, 0)
}

function linesOf(
  { spans, stops }: Timeline,
  crew: Crew,
  segment: TimelineSegment,
): readonly SheetLine[] {
  const here = spans.filter((span) => span.segment === segment.id)
  const lengthMs = segment.lengthMs ?? Math.max(0, ...here.map(({ toMs }) => toMs))
  const halts = stops.filter((stop) => stop.segment === segment.id)
  const moments = new Set([
    ...[0, lengthMs],
    ...here.flatMap(({ fromMs, toMs }) => [fromMs, toMs]),
    ...halts.map(({ atMs }) => atMs),
  ])
  return [...moments]
    .sort((a, b) => a - b)
    .map((clockMs) => {
      const halt = halts.find(({ atMs }) => atMs === clockMs)
      const kind = clockMs === 0 ? 'green' : clockMs === lengthMs ? 'end' : halt ? 'stop' : 'change'
      return {
        ...{ id: `${segment.id} ${clockMs}`, at: segment.startsAt + clockMs, clockMs, kind },
        ...whoFrom(here, crew, clockMs),
        what: [WHAT[kind], halt && haltWords(halt)].filter(Boolean).join('; '),
      }
    })
}

const WHAT = { green: 'Green', change: '', stop: '', end: 'Segment over' } as const

function haltWords(halt: Timeline['stops'][number]): string {
  const [task] = halt.tasks
  const called = halt.mandatory ? 'Mandatory stop' : 'Stop'
  return task === undefined ? called : `${called}: ${task}`
}

function whoFrom(spans: readonly TimelineSpan[], crew: Crew, clockMs: number) {
  const on = spans.filter(({ fromMs, toMs }) => fromMs <= clockMs && clockMs < toMs)
  const nameOf = (person: string) => crew.people.find(({ id }) => id === person)?.name ?? '?'
  const names = (duty: TimelineSpan['duty']) =>
    on
      .filter((span) => span.duty === duty)
      .map(({ person, post }) =>
        post === undefined ? nameOf(person) : `${nameOf(person)} (${post})`,
      )
      .join(', ')
  return {
    driver: names('controller'),
    marshals: names('post'),
    others: [names('wall'), names('bench')].filter((text) => text !== '').join(' · '),
  }
}
