/** The planner's answer → a plan document. Lines that stay keep their ids, so that nobody's phone rings for nothing. */
import type { Planned, Span } from '@pitlamp/planner'
import type { Plan, PlanSpan, PlanStop, TimelineSpan } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { cameToMs } from './segments.ts'

type Sheet = Pick<Planned, 'spans' | 'stops'>

/** What was driven keeps the lines it was planned by; whoever goes on over now has one line for both. */
export function planFrom(ground: Ground, answer: Sheet): Plan {
  const before = linesBefore(ground)
  const past = before.filter((line) => line.fromMs < line.nowMs && !line.isKeptOff)
  const goingOn = new Map<Line, Span>()
  for (const span of answer.spans) {
    const line = past.find(
      (one) => one.toMs >= one.nowMs && span.fromMs === one.nowMs && isLike(one, span),
    )
    if (line && !goingOn.has(line)) goingOn.set(line, span)
  }
  const ended = past.map((line) => {
    const on = goingOn.get(line)
    return written(line, on ? on.toMs : Math.min(line.toMs, line.nowMs))
  })
  const taken = new Set(ended.map(({ id }) => id))
  const open = before.filter((line) => !taken.has(line.id) && !line.isKeptOff)
  const fresh = freshIds('w', [...before, ...ground.plan.spans])
  const ahead = answer.spans
    .filter((span) => ![...goingOn.values()].includes(span))
    .map((span) => lineFor(span, { open, taken, fresh }))
  const off = before.filter((line) => line.isKeptOff)
  return {
    ...ground.plan,
    spans: [...ended, ...ahead, ...off.map((line) => written(line))],
    stops: stopsFrom(ground, answer),
  }
}

/** A line of the plan as it lies now, and how far its segment's race clock has come. */
interface Line extends TimelineSpan {
  readonly nowMs: number
  readonly pinned?: true
  /** The planner has no line for it: it stays whole, as it was written. */
  readonly isKeptOff: boolean
}

function linesBefore(ground: Ground): readonly Line[] {
  const nowMs = new Map(ground.timeline.segments.map((one) => [one.id, cameToMs(one, ground)]))
  const pinned = new Set(ground.plan.spans.flatMap((one) => (one.pinned ? [one.id] : [])))
  const people = new Set(ground.plan.keptPeople)
  return ground.planned.map((span) => {
    const isKept = pinned.has(span.id) || people.has(span.person)
    return {
      ...span,
      nowMs: nowMs.get(span.segment) ?? 0,
      ...(pinned.has(span.id) ? { pinned: true as const } : {}),
      isKeptOff: isKept && span.duty === 'offDuty',
    }
  })
}

function written(line: Line, toMs = line.toMs): PlanSpan {
  const { id, person, duty, segment, fromMs, post, lane, pinned } = line
  return {
    ...{ id, person, duty, segment, fromMs, toMs },
    ...(post === undefined ? {} : { post }),
    ...(lane === undefined ? {} : { lane }),
    ...(pinned ? { pinned } : {}),
  }
}

interface Lines {
  readonly open: readonly Line[]
  /** Ids given already; the one given here is added. */
  readonly taken: Set<string>
  readonly fresh: () => string
}

/** The line of the same person and duty that it shares most time with. */
function lineFor(span: Span, { open, taken, fresh }: Lines): PlanSpan {
  let [best, most] = [undefined as Line | undefined, 0]
  for (const line of open) {
    const shared = Math.min(line.toMs, span.toMs) - Math.max(line.fromMs, span.fromMs)
    if (!isLike(line, span) || taken.has(line.id) || shared <= most) continue
    ;[best, most] = [line, shared]
  }
  const id = best?.id ?? fresh()
  taken.add(id)
  const isKept = best?.pinned && span.fromMs <= best.fromMs && span.toMs >= best.toMs
  return { id, ...span, ...(isKept ? { pinned: true } : {}) }
}

function isLike(line: TimelineSpan, { person, duty, segment, post }: Span): boolean {
  const isSame = line.person === person && line.duty === duty && line.segment === segment
  return isSame && line.post === post
}

/**
 * Stops that were made or missed stay as they were planned, and given ones but for what is done there; a chosen one
 * takes the id of the nearest it replaces.
 */
function stopsFrom(ground: Ground, { stops }: Sheet): PlanStop[] {
  const nowMs = new Map(ground.timeline.segments.map((one) => [one.id, cameToMs(one, ground)]))
  const isPast = ({ segment, atMs }: PlanStop) => atMs <= (nowMs.get(segment) ?? -1)
  const past = ground.plan.stops.filter((stop) => ground.isRace && isPast(stop))
  const given = new Map(stops.map((stop) => [stop.given, stop]))
  const ahead = ground.plan.stops.filter((stop) => !past.includes(stop))
  const kept = ahead
    .filter(({ id }) => given.has(id))
    .map((stop): PlanStop => ({ ...taskOf(given.get(stop.id)), ...stop }))
  const open = ahead.filter(({ id }) => !given.has(id))
  const fresh = freshIds('x', ground.plan.stops)
  const chosen = stops
    .filter((stop) => stop.given === undefined)
    .map(({ segment, atMs, mandatory, task }): PlanStop => {
      const near = open
        .filter((one) => one.segment === segment)
        .sort((a, b) => Math.abs(a.atMs - atMs) - Math.abs(b.atMs - atMs))[0]
      if (near) open.splice(open.indexOf(near), 1)
      return {
        ...{ id: near?.id ?? fresh(), segment, atMs, mandatory },
        ...taskOf(task === undefined ? near : { task }),
      }
    })
  return [...past, ...kept, ...chosen]
}

function taskOf(of: { readonly task?: string } | undefined): Pick<PlanStop, 'task'> {
  return of?.task === undefined ? {} : { task: of.task }
}

function freshIds(prefix: string, lines: readonly { readonly id: string }[]): () => string {
  const taken = new Set(lines.map(({ id }) => id))
  let count = 0
  return () => {
    do count += 1
    while (taken.has(`${prefix}${count}`))
    return `${prefix}${count}`
  }
}

/** Lines that are not as they were: another person or duty, or an end that moved by more than a minute. */
export function changedLines(before: Plan, after: Plan, withinMs: number): number {
  return after.spans.filter(
    (span) =>
      !before.spans.some(
        (one) =>
          one.person === span.person &&
          one.duty === span.duty &&
          one.segment === span.segment &&
          Math.abs(one.fromMs - span.fromMs) <= withinMs &&
          Math.abs(one.toMs - span.toMs) <= withinMs,
      ),
  ).length
}
