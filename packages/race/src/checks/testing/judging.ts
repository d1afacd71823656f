/** A timeline written by hand and judged by one rule: people are called by their names, times are minutes. */
import type { Crew } from '../../documents/crew.ts'
import type { Regulations } from '../../documents/rules.ts'
import type { Duty } from '../../entry/scalars.ts'
import type { Rule, RuleKind, RuleValue } from '../../rules/index.ts'
import type { Timeline, TimelineSpan } from '../../timeline/timeline.ts'
import type { TimelineSegment } from '../../timeline/segments.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import { findings, type Finding } from '../findings.ts'
import type { Stretch } from '../stretches.ts'

const MINUTE_MS = 60_000
let made = 0

/** Meeting time of the first green. */
export const GREEN_AT = 1_000_000_000

export interface ByHand {
  readonly spans: readonly TimelineSpan[]
  /** Further rules, which the one under test leans on. */
  readonly also?: readonly Rule[]
  readonly stops?: readonly TimelineStop[]
  /** One segment of an hour where none is named. */
  readonly segments?: readonly TimelineSegment[]
  readonly categories?: Readonly<Record<string, readonly string[]>>
  /** Lap times in ms, as entered by hand. */
  readonly paces?: Readonly<Record<string, number>>
  /** Duties each can take; all where nothing is said. */
  readonly duties?: Readonly<Record<string, readonly Duty[]>>
  /** From and to of when each is there, in minutes from the first green. */
  readonly there?: Readonly<Record<string, readonly (readonly [number, number])[]>>
  /** Stretches that count as driving for nobody, from and to in minutes from the first green. */
  readonly notDriving?: readonly (readonly [number, number])[]
  /** Who is in the crew; whoever has a span where nothing is said. */
  readonly crew?: readonly string[]
  readonly isWhole?: boolean
}

/** The rule under test; without one, only what always holds and the further rules are judged. */
export interface UnderTest<K extends RuleKind> {
  readonly kind?: K
  readonly value?: RuleValue<K>
}

/** Findings of the rule under test; of everything where none is named. */
export function found<K extends RuleKind>(byHand: ByHand & UnderTest<K>): readonly Finding[] {
  const { kind, value, also = [] } = byHand
  const rule = kind === undefined ? [] : [{ id: 'under-test', kind, value } as Rule]
  const all = findings({
    regulations: regulationsOf([...rule, ...also]),
    crew: crewOf(byHand),
    timeline: timelineOf(byHand),
  })
  return kind === undefined ? all : all.filter((one) => one.rule === 'under-test')
}

export function timelineOf(byHand: ByHand): Timeline {
  const { stops = [], segments = [hour()], isWhole = true } = byHand
  const spans = [...byHand.spans].sort((a, b) => a.fromAt - b.fromAt)
  const notDriving = (byHand.notDriving ?? []).map(stretch)
  return { spans, stops, segments, isWhole, notDriving }
}

export function crewOf(byHand: ByHand): Crew {
  const { crew, spans, categories = {}, paces = {}, duties = {}, there = {} } = byHand
  const names = crew ?? [...new Set(spans.map(({ person }) => person))]
  return {
    people: names.map((name) => ({
      ...{ id: name, name, duties: [...(duties[name] ?? [])] },
      there: (there[name] ?? []).map((one, index) => ({ id: `there-${index}`, ...stretch(one) })),
      categories: [...(categories[name] ?? [])],
      ...(paces[name] === undefined ? {} : { paceMs: paces[name] }),
    })),
  }
}

function stretch([from, to]: readonly [number, number]): Stretch {
  return { fromAt: GREEN_AT + from * MINUTE_MS, toAt: GREEN_AT + to * MINUTE_MS }
}

export function regulationsOf(rules: readonly Rule[]): Regulations {
  return { name: 'By hand', timeZone: 'Europe/Dublin', programme: [], rules: [...rules] }
}

/** Of 60 min from the first green, unless it says otherwise. */
export function hour(segment: Partial<TimelineSegment> = {}): TimelineSegment {
  const { startsAt = GREEN_AT, lengthMs = 60 * MINUTE_MS } = segment
  const plain = { id: 'one', index: 0, after: 'start', over: false } as const
  return { ...plain, startsAt, endsAt: startsAt + lengthMs, lengthMs, ...segment }
}

export type HandSpan = Pick<TimelineSpan, 'person' | 'duty'> &
  Partial<TimelineSpan> & {
    /** Minutes from the first green to that of its segment. */
    readonly startsAfter?: number
  }

/** From and to in minutes of its segment's race clock. */
export function span({ startsAfter = 0, ...of }: HandSpan, from: number, to: number): TimelineSpan {
  const [fromMs, toMs] = [from * MINUTE_MS, to * MINUTE_MS]
  const startAt = GREEN_AT + startsAfter * MINUTE_MS
  made += 1
  return {
    ...{ id: `span-${made}`, segment: 'one', fromMs, toMs, done: false },
    ...{ fromAt: startAt + fromMs, toAt: startAt + toMs },
    ...of,
  }
}

export function drive(person: string, from: number, to: number): TimelineSpan {
  return span({ person, duty: 'controller' }, from, to)
}

export function marshal(person: string, from: number, to: number): TimelineSpan {
  return span({ person, duty: 'post' }, from, to)
}

export function stop(atMinute: number, rest: Partial<TimelineStop> = {}): TimelineStop {
  const atMs = atMinute * MINUTE_MS
  made += 1
  const plain = { id: `stop-${made}`, segment: 'one', mandatory: true, tasks: [], done: false }
  return { ...plain, atMs, at: GREEN_AT + atMs, ...rest }
}
