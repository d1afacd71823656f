/** Timelines as published rules speak of them: segments in a row, and who drives from when to when of the race. */
import {
  findings,
  type Finding,
  type Rule,
  type RuleKind,
  type RuleValue,
  type TimelineSegment,
  type TimelineSpan,
  type TimelineStop,
} from '@pitlamp/race'

export const MINUTE = 60_000
export const HOUR = 60 * MINUTE
const GREEN_AT = 1_800_086_400_000

export interface Race {
  /** Lengths in minutes. */
  readonly segments: readonly number[]
  /** Meeting time between two of them. */
  readonly betweenMinutes?: number
  readonly drives?: readonly Turn[]
  readonly posts?: readonly Turn[]
  readonly stops?: readonly Stop[]
  /** Of everybody; nobody's is known where nothing is said. */
  readonly paceMs?: number
}

/** From and to in minutes of the race clock, counted on over segments. */
export type Turn = readonly [person: string, from: number, to: number]

export interface Stop {
  readonly at: number
  readonly tasks?: readonly string[]
  readonly lastedSeconds?: number
}

/** What a rule makes of a race. */
export function judge<K extends RuleKind>(
  race: Race,
  kind: K,
  { value, also = [] }: { readonly value: RuleValue<K>; readonly also?: readonly Rule[] },
): readonly Finding[] {
  const rule = { id: 'rule', kind, value } as Rule
  const spans = [...spansOf(race, 'controller'), ...spansOf(race, 'post')]
  return findings({
    regulations: { name: 'R', timeZone: 'UTC', programme: [], rules: [rule, ...also] },
    crew: {
      people: [...new Set(spans.map(({ person }) => person))].map((name) => ({
        id: name,
        name,
        duties: [],
        ...(race.paceMs === undefined ? {} : { paceMs: race.paceMs }),
      })),
    },
    timeline: {
      segments: segmentsOf(race),
      spans: spans.sort((a, b) => a.fromAt - b.fromAt),
      stops: stopsOf(race),
      isWhole: true,
      notDriving: [],
    },
  }).filter((finding) => finding.rule === 'rule')
}

/** `[verdict, value, margin]` of each, in minutes where they are times. */
export function inMinutes(found: readonly Finding[]): readonly unknown[] {
  return found.map(({ verdict, unit, value, margin }) => {
    const one = unit === 'ms' ? MINUTE : 1
    return [verdict, value / one, margin / one]
  })
}

export function verdicts(found: readonly Finding[]): readonly string[] {
  return found.map(({ verdict }) => verdict)
}

/** `count` times the same. */
export function times<T>(count: number, make: (index: number) => T): readonly T[] {
  return Array.from({ length: count }, (_, index) => make(index))
}

/** Drivers in turn, each for so many minutes. */
export function inTurn(people: readonly string[], count: number, minutes: number): readonly Turn[] {
  return times(count, (turn) => [
    people[turn % people.length] ?? '',
    turn * minutes,
    (turn + 1) * minutes,
  ])
}

interface Placed {
  readonly segment: TimelineSegment
  /** Minutes of the race before it. */
  readonly before: number
  readonly minutes: number
}

function placed({ segments, betweenMinutes = 0 }: Race): readonly Placed[] {
  let before = 0
  return segments.map((minutes, index) => {
    const startsAt = GREEN_AT + (before + index * betweenMinutes) * MINUTE
    const one: Placed = {
      before,
      minutes,
      segment: {
        id: `s${String(index + 1)}`,
        index,
        startsAt,
        endsAt: startsAt + minutes * MINUTE,
        lengthMs: minutes * MINUTE,
        after: index === 0 ? 'start' : 'laneChange',
        over: false,
      },
    }
    before += minutes
    return one
  })
}

function segmentsOf(race: Race): readonly TimelineSegment[] {
  return placed(race).map(({ segment }) => segment)
}

function spansOf(race: Race, duty: 'controller' | 'post'): readonly TimelineSpan[] {
  const turns = (duty === 'controller' ? race.drives : race.posts) ?? []
  return turns.flatMap(([person, from, to], turn) =>
    placed(race).flatMap(({ segment, before, minutes }): readonly TimelineSpan[] => {
      const fromMs = (Math.max(from, before) - before) * MINUTE
      const toMs = (Math.min(to, before + minutes) - before) * MINUTE
      if (toMs <= fromMs) return []
      const [fromAt, toAt] = [segment.startsAt + fromMs, segment.startsAt + toMs]
      const id = `${duty}-${String(turn)}-${segment.id}`
      return [{ id, person, duty, segment: segment.id, fromMs, toMs, fromAt, toAt, done: false }]
    }),
  )
}

function stopsOf(race: Race): readonly TimelineStop[] {
  return (race.stops ?? []).map(({ at, tasks = [], lastedSeconds }, index) => {
    const { segment, before } = placed(race).find((one) => at <= one.before + one.minutes) ?? {}
    if (!segment || before === undefined) throw new Error(`There is no minute ${String(at)}.`)
    const atMs = (at - before) * MINUTE
    return {
      id: `stop-${String(index)}`,
      segment: segment.id,
      atMs,
      at: segment.startsAt + atMs,
      mandatory: true,
      tasks,
      done: lastedSeconds !== undefined,
      ...(lastedSeconds === undefined ? {} : { lastedMs: lastedSeconds * 1_000 }),
    }
  })
}
