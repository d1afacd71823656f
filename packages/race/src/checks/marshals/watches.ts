/** Who stands at posts, instant by instant and stay by stay. */
import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench } from '../bench.ts'
import type { Stretch } from '../stretches.ts'
import { durationInWords } from '../in-words.ts'

/** A stretch of a segment with the same number of people at posts; one person at two posts counts once. */
export interface Watch extends Stretch {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
  readonly count: number
  /** Everybody who is at a post in some part of it. */
  readonly people: readonly string[]
  readonly spans: readonly string[]
}

/** A segment from green to its end, or as far as the timeline has come, cut where the number changes. */
export function watchesOf(bench: Bench, segment: TimelineSegment): readonly Watch[] {
  const here = bench.spansIn(segment.id)
  const posts = here.filter(({ duty }) => duty === 'post')
  const edges = edgesOf(segment, { here, posts, untilAt: cameToAt(bench, segment) })
  const pieces: Piece[] = []
  edges.forEach((from, place) => {
    const to = edges[place + 1]
    if (!to) return
    const there = posts.filter((span) => span.fromAt <= from.at && span.toAt >= to.at)
    const count = peopleOf(there).length
    const last = pieces.at(-1)
    if (last?.count === count) {
      last.to = to
      last.there.push(...there)
    } else pieces.push({ from, to, count, there })
  })
  return pieces.map((piece) => watchOf(bench, segment.id, piece))
}

interface Piece {
  readonly from: Edge
  to: Edge
  readonly count: number
  /** Whoever is at a post for the whole of a part of it, part by part. */
  readonly there: TimelineSpan[]
}

function watchOf(bench: Bench, segment: string, { from, to, count, there }: Piece): Watch {
  const times = { fromAt: from.at, fromMs: from.clockMs, toAt: to.at, toMs: to.clockMs }
  const spans = [...new Set(there.map(({ id }) => id))]
  return { segment, ...times, count, people: inCrewsOrder(bench, peopleOf(there)), spans }
}

function peopleOf(spans: readonly TimelineSpan[]): readonly string[] {
  return spans.length < 2
    ? spans.map(({ person }) => person)
    : [...new Set(spans.map(({ person }) => person))]
}

/** However their spans lie. */
function inCrewsOrder(bench: Bench, people: readonly string[]): readonly string[] {
  if (people.length < 2) return people
  return bench.people.flatMap(({ id }) => (people.includes(id) ? [id] : []))
}

/** The segment's end; in a race that runs the last that anybody did; nothing before green. */
export function cameToAt({ timeline, spansIn }: Bench, segment: TimelineSegment): number {
  const { id, startsAt, endsAt, over } = segment
  if (endsAt !== undefined && (over || timeline.isWhole)) return endsAt
  return spansIn(id).reduce((last, { toAt }) => Math.max(last, toAt), startsAt)
}

interface Edge {
  readonly at: number
  readonly clockMs: number
}

interface ToCut {
  readonly here: readonly TimelineSpan[]
  readonly posts: readonly TimelineSpan[]
  readonly untilAt: number
}

function edgesOf(
  { startsAt, lengthMs }: TimelineSegment,
  { here, posts, untilAt }: ToCut,
): readonly Edge[] {
  const untilMs =
    here.find(({ toAt }) => toAt === untilAt)?.toMs ??
    lengthMs ??
    here.reduce((furthest, { toMs }) => Math.max(furthest, toMs), 0)
  const clocks = new Map<number, number>()
  for (const { fromAt, fromMs, toAt, toMs } of posts) clocks.set(fromAt, fromMs).set(toAt, toMs)
  clocks.set(startsAt, 0).set(untilAt, untilMs)
  return [...clocks]
    .map(([at, clockMs]) => ({ at, clockMs }))
    .filter(({ at }) => at >= startsAt && at <= untilAt)
    .sort((a, b) => a.at - b.at)
}

/** `from 0:20 to 0:25 of segment 1`, on the race clock. */
export function watchName({ segmentName }: Bench, watch: Watch): string {
  const { segment, fromMs, toMs } = watch
  return `from ${durationInWords(fromMs)} to ${durationInWords(toMs)} of ${segmentName(segment)}`
}

/** One person at one post of a segment without leaving it. */
export interface Stay extends Stretch {
  readonly person: string
  readonly segment: string
  readonly post: string | undefined
  /** Race clock at its end. */
  readonly toMs: number
  readonly fromMs: number
  readonly spans: readonly string[]
}

/** In order of beginning. */
export function staysOf({ timeline }: Bench): readonly Stay[] {
  const stays: Stay[] = []
  const places = new Map<string, number>()
  for (const span of timeline.spans) {
    if (span.duty !== 'post') continue
    const where = `${span.person} ${span.segment} ${span.post ?? ''}`
    const place = places.get(where)
    const before = place === undefined ? undefined : stays[place]
    if (place !== undefined && before && span.fromAt <= before.toAt) {
      stays[place] = stayedOn(before, span)
      continue
    }
    places.set(where, stays.length)
    const { person, segment, post, fromAt, toAt, fromMs, toMs } = span
    stays.push({ person, segment, post, fromAt, toAt, fromMs, toMs, spans: [span.id] })
  }
  return stays
}

function stayedOn(stay: Stay, { id, toAt, toMs }: TimelineSpan): Stay {
  return {
    ...stay,
    toAt: Math.max(stay.toAt, toAt),
    toMs: Math.max(stay.toMs, toMs),
    spans: [...stay.spans, id],
  }
}

/** `post 4`, or `a post` where it has no name. */
export function postName({ post }: Pick<Stay, 'post'>): string {
  return post === undefined ? 'a post' : `post ${post}`
}
